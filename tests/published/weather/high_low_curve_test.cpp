#include "weather/forecast/high_low_curve.h"

#include <initializer_list>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_high_low_curve {

TEST_CASE("a day from its high and low") {
  struct Row {
    double hour;
    double air_c;
  };
  // The source's coefficients for air at 1.5 m with the correction that reaches the next low
  // (ours): sunrise 6 h, sunset 18 h, high 30, low 15 °C.
  constexpr Published curve{.what = "air through a day from its high and low",
                            .source = "Parton & Logan 1981, evaluated independently",
                            .tolerance = 0.0005,
                            .unit = "°C"};
  constexpr HighLowSpan day{.rise_h = 6.0,
                            .set_h = 18.0,
                            .next_rise_h = 30.0,
                            .low_c = 15.0,
                            .high_c = 30.0,
                            .next_low_c = 15.0};
  for (const Row& row : {Row{8.0, 21.303}, Row{12.0, 29.153}, Row{16.0, 28.430}, Row{18.0, 24.771},
                         Row{22.0, 19.038}, Row{26.0, 16.284}}) {
    check_row(curve, fmt::format("hour {:g}", row.hour), row.air_c, high_low_air_c(day, row.hour));
  }
}

}  // namespace published_high_low_curve
