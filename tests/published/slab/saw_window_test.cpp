#include <algorithm>
#include <array>
#include <utility>

#include <doctest/doctest.h>

#include "published/published_row.h"
#include "slabtide/core/units.h"
#include "slabtide/slab/mix/mix_model.h"
#include "slabtide/slab/process/setting.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::fixtures;
using namespace slabtide::test;

// When the saws can start, in hours after finishing (resistance 300 psi, the last of the
// stamping). Practice: conventional saw 4 h after finishing in hot weather to 12 h in cold,
// early-entry saw 1 h to 4 h (ACI 302.1R and 224.4R through the ACI FAQ; published). The
// thresholds held against it: early entry final set and 150 psi (common practice), wet saw
// 500 psi (from memory, medium aggregate). "Hot" and "cold" have no figures in the source.

namespace {

constexpr Published early_entry{.what = "early-entry saw after finishing, one column",
                                .source = "ACI 302.1R and 224.4R through the ACI FAQ",
                                .tolerance = 0.3,
                                .unit = "h"};
constexpr Published wet{.what = "wet saw after finishing, one column",
                        .source = "ACI 302.1R and 224.4R through the ACI FAQ",
                        .tolerance = 3.0,
                        .unit = "h"};

struct SawOpens {
  double early_entry_h;
  double wet_h;
};

SawOpens saws_open(double high_f, double low_f, double concrete_f, bool sun) {
  const Day day{.high_c = celsius_from_fahrenheit(high_f),
                .low_c = celsius_from_fahrenheit(low_f),
                .dew_point_c = celsius_from_fahrenheit(low_f) - 2.0,
                .hours = 36.0};
  const SiteWeather weather = day_weather(day);
  const CellExposure exposure =
      sun ? in_the_sun(weather, day.start_hour, 900.0) : in_the_shade(weather, 0.7);
  const MixModel mix = mix_model(Mix{}, {});
  const ColumnCase column =
      slab_on_gravel(mix, exposure, celsius_from_fahrenheit(concrete_f), m_from_in(4.0));
  const ColumnHistory h = solve_columns(std::array{column}, weather, {})[0];
  const double finished_s = when_reached(h, h.resistance_work_psi, 300.0);
  const double set_s = when_reached(h, h.resistance_middle_psi, final_set_psi);
  const double early_s = std::max(set_s, when_reached(h, h.strength_psi, 150.0));
  const double wet_s = when_reached(h, h.strength_psi, 500.0);
  return {(early_s - finished_s) / 3600.0, (wet_s - finished_s) / 3600.0};
}

}  // namespace

TEST_CASE("saws open within what practice gives for hot to cold weather") {
  const SawOpens hot = saws_open(95, 72, 85, true);
  const SawOpens mild = saws_open(72, 50, 68, true);
  const SawOpens cold = saws_open(55, 42, 60, false);
  for (const auto& [name, opens] :
       {std::pair{"hot, in the sun", hot}, {"mild, in the sun", mild}, {"cool shade", cold}}) {
    check_range(early_entry, name, 1.0, 4.0, opens.early_entry_h);
    check_range(wet, name, 4.0, 12.0, opens.wet_h);
  }
  CHECK(hot.early_entry_h < mild.early_entry_h);
  CHECK(mild.early_entry_h < cold.early_entry_h);
  CHECK(hot.wet_h < mild.wet_h);
  CHECK(mild.wet_h < cold.wet_h);
}
