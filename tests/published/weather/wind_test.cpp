#include "slabtide/weather/wind.h"

#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("wind at 0.5 m over wind at 10 m by the log law") {
  struct Row {
    double roughness_m;
    double ratio;
    double tolerance;  // half the last digit given
  };
  // Stull 2017, eq. 18.14, with Davenport-Wieringa roughness: smooth ground, open grass, tall
  // grass. Published. Seen: 0.004, 0.0003, 0.0006.
  for (const Row& row :
       {Row{0.005, 0.61, 0.005}, Row{0.03, 0.484, 0.0005}, Row{0.1, 0.35, 0.005}}) {
    const double off = log_law_ratio(0.5, 10.0, row.roughness_m) - row.ratio;
    MESSAGE("log law over ", row.roughness_m, " m: off by ", off);
    CHECK(std::abs(off) <= row.tolerance);
  }
}
