#include <limits>

#include <doctest/doctest.h>

#include "published/published_row.h"
#include "slabtide/day/pour/cell_times.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

// Facts of the trade: common practice, no source.

namespace slabtide::published_common_practice {

namespace {

using test::check_range;
using test::check_row;
using test::minutes_in;
using test::plan_of;
using test::Published;
using test::window_of;

constexpr double no_end = std::numeric_limits<double>::infinity();

Published practice_says(std::string_view what, std::string_view unit, double tolerance = 0.0,
                        std::string_view because = test::given_as_range) {
  return {.what = what,
          .source = "the trade",
          .status = "common practice, no source",
          .tolerance = tolerance,
          .unit = unit,
          .because = because};
}

/// A cool, clear day in spring: low 5 °C, high 19 °C (41 and 66 °F), concrete at 62 °F.
Job spring_job(std::initializer_list<Zone> zones) {
  Job job = test::sample_job(zones);
  TypedWeather weather;
  weather.low_c = 5.0;
  weather.high_c = 18.9;
  weather.wind_10m_m_s = 3.1;
  job.weather = weather;
  job.mix.temperature = 16.7;
  job.mix.air_fraction = 0.06;
  return job;
}

/// A house to the east of x = 1.22, with the morning sun behind it.
Obstacle house_to_the_east(double south_m, double north_m) {
  Obstacle wall;
  wall.name = "house";
  wall.from = {2.0, south_m};
  wall.to = {2.0, north_m};
  wall.height_m = 6.0;
  return wall;
}

TEST_CASE("the sunny end of a walk takes texture 40 minutes before its shaded end") {
  // 4 in thick, 4 x 40 ft running north, with its south half behind a house; all placed at once.
  Zone walk = test::zone_named("walk", test::rectangle(0.0, 0.0, 1.22, 12.2), Finish::texture_roll);
  walk.path = Walkway{{{0.61, 0.0}, {0.61, 12.2}}, 1.22};
  Job job = spring_job({walk});
  job.pour.placing_rate_m3_h = 50.0;
  job.obstacles = {house_to_the_east(-20.0, 6.1)};
  const auto planned = plan_of(job);
  const ZonePlan& zone = planned.plan.zones[0];
  REQUIRE(zone.parts.size() >= 2);
  const double first_min = minutes_in(job, window_of(zone.parts.front(), Operation::texture).opens);
  const double last_min = minutes_in(job, window_of(zone.parts.back(), Operation::texture).opens);
  check_range(practice_says("sunny end of a walk before its shaded end", "min"), "cool clear day",
              40.0, no_end, last_min - first_min);
  CHECK(zone.parts.front().name.find("far") == 0);
  CHECK(!zone.working_order.empty());
}

TEST_CASE("a shaded riser strips later than a sunny top is ready") {
  Zone landing = test::zone_named("landing", test::rectangle(0.0, 0.0, 4.0, 3.0), Finish::stamp);
  FormedFace riser;
  riser.length_m = 4.0;
  riser.height_m = 0.18;
  riser.facing_deg = 0.0;  // north: never in the sun while it is stripped
  riser.at = Point{2.0, 3.0};
  landing.faces = {riser};
  const Job job = spring_job({landing});
  const auto planned = plan_of(job);
  const ZonePlan& zone = planned.plan.zones[0];
  // Stripping opens at 10 psi: the sunny top is ready before the riser, and can be stamped well
  // before the riser is too stiff to face.
  const auto& top = planned.run.histories[planned.run.zones[0].cells[0].history];
  const double top_strip_s = *first_reaches(top.time_s, top.resistance_work_psi, 10.0);
  const auto& stamp = window_of(zone.whole, Operation::stamp);
  const Published riser_after = practice_says("shaded riser after the sunny top", "min");
  check_range(
      riser_after, "10 psi", 0.0, no_end,
      minutes_in(job, zone.faces[0].strip.opens) - minutes_in(job, planned.run.at(top_strip_s)));
  check_range(riser_after, "stripped until, after the stamp opens", 0.0, no_end,
              minutes_in(job, zone.faces[0].strip.closes) - minutes_in(job, stamp.opens));
}

TEST_CASE("a slab tied to a foundation, placed on a cool spring morning, is cut that evening") {
  Zone porch = test::zone_named("porch", test::rectangle(0.0, 0.0, 6.0, 3.0), Finish::stamp);
  porch.tied = true;
  Job job = spring_job({porch});
  job.pour.saws = {SawKind::early_entry, SawKind::wet};
  const auto planned = plan_of(job);
  const ZonePlan& zone = planned.plan.zones[0];
  const UtcTime midnight(job.pour.date + boost::gregorian::days(1), boost::posix_time::hours(0));
  for (const SawPlan& saw : zone.saws) {
    REQUIRE(saw.latest);
    check_range(practice_says("tied slab cut before midnight, hours to spare", "h"),
                saw.kind == SawKind::wet ? "wet saw" : "early-entry saw", 0.0, no_end,
                seconds_between(*saw.latest, midnight) / 3600.0);
    CHECK(*saw.latest > *planned.plan.zones[0].whole.final_set);
  }
  CHECK(!zone.saws[0].too_late);
}

namespace {

struct WindowDay {
  double low_c;
  double high_c;
  double concrete_c;
  bool shaded;
};

/// Minutes during which all of a 3 by 3 m pad can be stamped. Practice gives the temperature and
/// whether the sun shines. Ours, for every row: everything else as on the spring day, and the dew
/// point just below the night's low, as after any night with dew.
double stamping_min(const WindowDay& day) {
  constexpr double dew_under_low_k = 2.0;
  Job job = spring_job({test::zone_named("pad", test::rectangle(0, 0, 3, 3), Finish::stamp)});
  job.zones[0].shaded = day.shaded;
  job.mix.temperature = day.concrete_c;
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.low_c = day.low_c;
  weather.high_c = day.high_c;
  weather.dew_point_c = day.low_c - dew_under_low_k;
  return *window_of(plan_of(job).plan.zones[0].whole, Operation::stamp).minutes();
}

constexpr WindowDay near_73_f{.low_c = 21, .high_c = 24, .concrete_c = 22.8, .shaded = true};
constexpr WindowDay hot_sun{.low_c = 24, .high_c = 35, .concrete_c = 30, .shaded = false};
constexpr WindowDay cool_shade{.low_c = 2, .high_c = 9, .concrete_c = 10, .shaded = true};

}  // namespace

TEST_CASE("the stamping window near 73 F, in hot sun and in cool shade, beside practice") {
  constexpr double quarter_hours_min = 7.5;
  check_row(practice_says("stamping window near 73 °F", "min", quarter_hours_min,
                          "about an hour, taken to a quarter"),
            "in the shade", 60.0, stamping_min(near_73_f));
  check_range(practice_says("stamping window in hot sun", "min"), "35 °C, concrete 30 °C", 20.0,
              45.0, stamping_min(hot_sun));
  check_range(practice_says("stamping window in cool shade", "min"), "2 to 9 °C", 120.0, no_end,
              stamping_min(cool_shade));
}

TEST_CASE("exposed aggregate and salt on a day near 73 F, beside practice") {
  const auto near_73 = [](Finish finish) {
    Job job = spring_job({test::zone_named("pad", test::rectangle(0, 0, 3, 3), finish)});
    job.zones[0].shaded = true;
    job.mix.temperature = 22.8;
    auto& weather = std::get<TypedWeather>(job.weather);
    weather.low_c = 21.0;
    weather.high_c = 24.0;
    return job;
  };
  const Job exposed = near_73(Finish::exposed_aggregate);
  const PartPlan pad = plan_of(exposed).plan.zones[0].whole;
  const auto hours = [](const Job& job, const std::optional<UtcTime>& at) {
    return minutes_in(job, at) / 60.0;
  };
  check_range(practice_says("surface retarder sprayed, after placing", "h"), "near 73 °F", 0.5, 4.0,
              hours(exposed, window_of(pad, Operation::retard).opens));
  check_range(practice_says("exposed aggregate bears the wash-off, after placing", "h"),
              "near 73 °F", 4.0, 24.0, hours(exposed, window_of(pad, Operation::walk).opens));
  check_range(practice_says("exposed aggregate washed off, after placing", "h"), "near 73 °F", 4.0,
              24.0, hours(exposed, window_of(pad, Operation::expose).opens));
  const Job salted = near_73(Finish::salt);
  const PartPlan walk = plan_of(salted).plan.zones[0].whole;
  check_range(practice_says("rock salt rolled in, after placing", "h"), "near 73 °F", 1.5, 5.0,
              hours(salted, window_of(walk, Operation::salt).opens));
  check_range(practice_says("rock salt washed out, after placing", "h"), "near 73 °F", 24.0, 72.0,
              hours(salted, window_of(walk, Operation::wash).opens));
}

}  // namespace

}  // namespace slabtide::published_common_practice
