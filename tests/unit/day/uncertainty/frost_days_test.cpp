#include "day/uncertainty/frost_days.h"

#include <limits>

#include <doctest/doctest.h>

#include "slabtide/day/uncertainty/bands.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

ColumnEvents coldest(double surface_c) {
  ColumnEvents events;
  events.min_young_surface_c = surface_c;
  return events;
}

/// Of two zones with a column each, so cold on the planned day and on four days drawn.
Ensemble four_nights() {
  Ensemble ensemble;
  ensemble.zones.resize(2);
  ensemble.zones[1].whole = {1, 1};
  ensemble.planned = {coldest(2.0), coldest(8.0)};
  ensemble.days = {{coldest(-1.0), coldest(5.0)},
                   {coldest(0.5), coldest(6.0)},
                   {coldest(4.0), coldest(9.0)},
                   {coldest(-3.0), coldest(3.0)}};
  ensemble.weights = {0.25, 0.25, 0.25, 0.25};
  return ensemble;
}

std::vector<ZonePlan> zones_so_cold(double first_c, double second_c) {
  std::vector<ZonePlan> zones(2);
  zones[0].frost.min_surface_c = first_c;
  zones[1].frost.min_surface_c = second_c;
  for (ZonePlan& zone : zones) {
    zone.frost.coldest_at = UtcTime(Date(2026, 5, 15), boost::posix_time::hours(4));
  }
  return zones;
}

Job two_pads() {
  return test::sample_job({test::zone_named("near", test::rectangle(0, 0, 4, 4)),
                           test::zone_named("far", test::rectangle(10, 0, 4, 4))});
}

/// The pads on a night whose low leaves their surface within a quarter of a degree of frost.
Job just_above_frost() {
  Job job = two_pads();
  TypedWeather weather = std::get<TypedWeather>(job.weather);
  weather.high_c = 12.0;
  weather.low_c = 1.0;
  job.mix.temperature = 15.0;
  double warm_c = 0.0;
  double cold_c = -30.0;
  while (warm_c - cold_c > 0.2) {
    weather.next_low_c = 0.5 * (warm_c + cold_c);
    job.weather = weather;
    const bool freezes = test::PlannedDay(job).plan().zones[0].frost.at.has_value();
    (freezes ? cold_c : warm_c) = *weather.next_low_c;
  }
  weather.next_low_c = warm_c;
  job.weather = weather;
  return job;
}

const Caution* frost_told(const std::vector<Caution>& cautions) {
  for (const Caution& one : cautions) {
    if (one.code == "frost_days") return &one;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("a zone's coldest surface moves as its columns do on each day") {
  const FrostDays frost = frost_days(zones_so_cold(2.0, 8.0), four_nights());
  CHECK(frost.zone_fractions == std::vector{0.5, 0.0});
  CHECK(frost.any_fraction == 0.5);
  // A zone two degrees colder than its columns freezes on a day more, and so does one of blankets
  // that are left at home.
  CHECK(frost_days(zones_so_cold(0.0, 4.0), four_nights()).zone_fractions ==
        std::vector{0.75, 0.25});
  const double strong = std::numeric_limits<double>::infinity();
  CHECK(frost_days(zones_so_cold(strong, strong), four_nights()).any_fraction == 0.0);
}

TEST_CASE("a frost on one day in three stops the pour, on one in ten it is told") {
  std::vector<ZonePlan> zones = zones_so_cold(2.0, 2.0);
  const Job job = two_pads();
  CHECK(frost_cautions(job, zones, {{0.09, 0.0}, 0.09}).empty());
  const auto told = frost_cautions(job, zones, {{0.1, 0.34}, 0.34});
  REQUIRE(told.size() == 2);
  CHECK(told[0].level == CautionLevel::caution);
  CHECK(told[0].text.find("on 10 days in 100") == 0);
  CHECK(told[1].level == CautionLevel::stop);
  // Where the likely day freezes the plan says so already.
  zones[1].frost.at = job.pour.start;
  CHECK(frost_cautions(job, zones, {{0.0, 0.9}, 0.9}).empty());
}

TEST_CASE("plan and comparison tell a frost on the days drawn alike") {
  // ACI 306R-10 (published): no frost before 500 psi.
  const Job job = just_above_frost();
  const test::PlannedDay day(job);
  REQUIRE_FALSE(day.plan().zones[0].frost.at);
  const Ensemble nights = sampled_days(day.pour(), {40, 0, {}});
  const DayPlan banded = with_bands(day.plan(), job, nights);
  const Caution* frost = frost_told(banded.cautions);
  REQUIRE(frost != nullptr);
  CHECK(frost->zone == "near");
  const SampledDays drawn{banded, nights};
  const ChoiceFigures of_plan = figures_of(job, banded, drawn);
  const ChoiceFigures of_choice = figures_of(job, day.plan(), drawn);
  CHECK(of_choice.judgement.verdict == judge(banded.cautions).verdict);
  CHECK(of_choice.judgement.reasons == of_plan.judgement.reasons);
}

}  // namespace slabtide
