#include "slabtide/day/plan/weather_risk.h"

#include <doctest/doctest.h>

#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

/// A planned pad whose rain and surfaces the tests change.
struct Pad {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 3.0, 3.0))});
  PourRun run = test::plan_of(job).run;
  WeatherLimits limits = default_practice().limits;

  UtcTime step(std::size_t k) const {
    return run.at(static_cast<double>(k) * run.weather.grid.step_s);
  }
  void rain(std::size_t from, std::size_t end, double chance, double mm_h) {
    for (std::size_t k = from; k < end; ++k) {
      run.weather.rain_chance[k] = chance;
      run.weather.rain_mm_h[k] = mm_h;
    }
  }
  RainRisk between(std::size_t from, std::size_t to) const {
    return rain_between(run, step(from), step(to), limits);
  }
};

constexpr std::size_t steps_per_hour = 12;  // of five minutes

TEST_CASE("rain counts within its span alone, its amount added up") {
  Pad pad;
  pad.rain(24, 36, 0.2, 0.0);
  pad.rain(36, 48, 0.6, 2.0);
  const RainRisk before = pad.between(0, 36);
  CHECK(before.chance == 0.2);
  CHECK(before.amount_mm == 0.0);
  CHECK_FALSE(before.first);  // under the chance worth a word
  CHECK_FALSE(before.too_often());
  const RainRisk all = pad.between(0, 48);
  CHECK(all.chance == 0.6);
  CHECK(all.amount_mm == doctest::Approx(2.0));  // an hour of it
  REQUIRE(all.first);
  CHECK(all.first->from == pad.step(36));
  CHECK(all.first->chance == 0.6);
  CHECK(all.too_often());
  CHECK(all.wets_chance() == 0.6);
  CHECK(pad.between(48, 96).amount_mm == 0.0);
}

TEST_CASE("a forecast that gives amounts without chances means its rain") {
  Pad pad;
  pad.rain(12, 12 + steps_per_hour, 0.0, 1.0);
  const RainRisk risk = pad.between(0, 60);
  CHECK(risk.too_often());
  CHECK(risk.chance == 0.0);
  CHECK(risk.wets_chance() == 1.0);
  CHECK(pad.between(30, 60).wets_chance() == 0.0);
}

TEST_CASE("one in three is too often, and rain that begins in the last step has its chance") {
  Pad pad;
  pad.rain(12, 24, 0.32, 0.0);
  CHECK_FALSE(pad.between(0, 24).too_often());
  CHECK_FALSE(pad.between(0, 13).too_often());
  CHECK(pad.between(0, 13).first->chance == 0.32);
  pad.rain(12, 24, 0.34, 0.0);
  CHECK(pad.between(0, 24).too_often());
}

TEST_CASE("frost counts while the concrete is too weak for it") {
  Pad pad;
  const FrostRisk mild = frost_on_young(pad.run.zones[0], pad.run, pad.limits);
  CHECK_FALSE(mild.at);
  CHECK(mild.min_surface_c > 0.0);
  ColumnHistory& history = pad.run.histories[pad.run.zones[0].cells[0].history];
  std::size_t strong = 0;
  while (history.strength_psi[strong] < pad.limits.protect_until_psi) ++strong;
  REQUIRE(strong > 4);
  history.surface_c[strong + 1] = -5.0;
  CHECK_FALSE(frost_on_young(pad.run.zones[0], pad.run, pad.limits).at);
  history.surface_c[strong - 2] = -1.0;
  history.surface_c[strong - 1] = -3.0;
  const FrostRisk frost = frost_on_young(pad.run.zones[0], pad.run, pad.limits);
  REQUIRE(frost.at);
  CHECK(*frost.at == pad.run.at(history.time_s[strong - 2]));
  CHECK(frost.min_surface_c == -3.0);
}

}  // namespace
}  // namespace slabtide
