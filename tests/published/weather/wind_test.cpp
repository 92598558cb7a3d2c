#include "weather/air/wind.h"

#include <initializer_list>

#include <cmath>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_wind {

namespace {

/// Wind at one height over the wind at another in neutral air over even ground: ln(z/z0)/ln(zr/z0).
/// Source: Stull 2017, Practical Meteorology, eq. 18.14. Status: published.
double log_law_ratio(double height_m, double reference_height_m, double roughness_m) {
  return std::log(height_m / roughness_m) / std::log(reference_height_m / roughness_m);
}

}  // namespace

TEST_CASE("wind at 0.5 m over wind at 10 m by the log law") {
  struct Row {
    double roughness_m;
    double ratio;
    double half_digit;
  };
  // Smooth ground, open grass, tall grass.
  Published log_law{.what = "wind at 0.5 m over wind at 10 m",
                    .source = "Stull 2017, eq. 18.14, with Davenport-Wieringa roughness"};
  for (const Row& row :
       {Row{0.005, 0.61, 0.005}, Row{0.03, 0.484, 0.0005}, Row{0.1, 0.35, 0.005}}) {
    log_law.tolerance = row.half_digit;
    check_row(log_law, fmt::format("roughness {:g} m", row.roughness_m), row.ratio,
              log_law_ratio(0.5, 10.0, row.roughness_m));
  }
}

}  // namespace published_wind
