#include <doctest/doctest.h>

#include "slabtide/job/reading/read_job.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

// The calendar, the hemisphere and the units must not affect the concrete.

namespace slabtide {

namespace {

using test::minutes_in;
using test::plan_of;
using test::Planned;

TimeZone zone_of(const char* name) {
  auto loaded = TimeZone::load(name);
  REQUIRE(loaded.zone);
  return *loaded.zone;
}

/// Constant weather, so that only elapsed time matters.
Forecast flat_forecast(UtcTime from, int hours) {
  Forecast forecast;
  forecast.source = "flat";
  for (int i = 0; i < hours; ++i) {
    ForecastHour hour;
    hour.at = after_seconds(from, 3600.0 * i);
    hour.air_c = 15.0;
    hour.dew_point_c = 8.0;
    hour.wind_10m_m_s = 2.0;
    hour.cloud_fraction = 1.0;
    forecast.hours.push_back(hour);
  }
  return forecast;
}

Job read(std::string_view toml) {
  const Parsed<Job> reading = read_job(toml);
  INFO(render_all(reading.diagnostics, "job.toml", toml));
  REQUIRE(reading.ok());
  return *reading.value;
}

constexpr const char* us_twin = R"(name = "twin"
[site]
name = "twin"
latitude = 45
longitude = -92
elevation = 1000
time_zone = "America/Chicago"
[pour]
date = 2026-05-14
start = "08:00"
[weather]
high = 68
low = 41
dew_point = 41
wind = 10
cloud = 0
[mix]
cementitious = 564
w_cm = 0.45
air = 6
strength = 4000
concrete_temperature = 63.5
[[zone]]
name = "pad"
outline = [[0, 0], [20, 0], [20, 10], [0, 10]]
thickness = 4
finish = "stamp"
)";

constexpr const char* si_twin = R"(name = "twin"
units = "si"
[site]
name = "twin"
latitude = 45
longitude = -92
elevation = 304.8
time_zone = "America/Chicago"
[pour]
date = 2026-05-14
start = "08:00"
[weather]
high = 20
low = 5
dew_point = 5
wind = 4.4704
cloud = 0
[mix]
cementitious = 334.613
w_cm = 0.45
air = 6
strength_psi = 4000
concrete_temperature = 17.5
[[zone]]
name = "pad"
outline = [[0, 0], [6.096, 0], [6.096, 3.048], [0, 3.048]]
thickness = 101.6
finish = "stamp"
)";

}  // namespace

TEST_CASE("a pour across a clock change keeps true elapsed time") {
  struct ClockChange {
    const char* eve;
    const char* zone;
  };
  const ClockChange changes[] = {{"2026-03-07", "America/Chicago"},
                                 {"2026-10-31", "America/Chicago"},
                                 {"2026-04-04", "Australia/Sydney"},
                                 {"2026-10-03", "Australia/Sydney"}};
  for (const ClockChange& change : changes) {
    CAPTURE(change.eve);
    CAPTURE(change.zone);
    Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 3, 3))});
    job.zones[0].shaded = true;
    job.site.ground_c = 15.0;  // else the base is followed from a midnight of the time zone on
    job.site.time_zone = zone_of(change.zone);
    job.pour.date = *parse_date(change.eve);
    // The evening before the change, so that final set is after it.
    job.pour.start =
        job.site.time_zone.utc_from_local(LocalTime(job.pour.date, boost::posix_time::hours(22)))
            .utc;
    const UtcTime from = after_seconds(job.pour.start, -6.0 * 3600.0);
    const auto series = WeatherSeries::from_forecast(flat_forecast(from, 72));
    REQUIRE(series.ok());
    const auto changed = plan_of(job, *series.value);
    Job plain = job;
    plain.site.time_zone = TimeZone();
    const auto same = plan_of(plain, *series.value);
    CHECK(changed.plan.zones[0].whole.final_set == same.plan.zones[0].whole.final_set);
    // The wall clock shows the jump.
    const double elapsed_h = minutes_in(job, changed.plan.zones[0].whole.final_set) / 60.0;
    const LocalTime start = job.site.time_zone.local_from_utc(job.pour.start);
    const LocalTime set = job.site.time_zone.local_from_utc(*changed.plan.zones[0].whole.final_set);
    const double wall_h = seconds_between(start, set) / 3600.0;
    CHECK(std::abs(wall_h - elapsed_h) == doctest::Approx(1.0));
  }
}

TEST_CASE("the same day south of the equator, its shade mirrored, sets alike") {
  // A wall to the north shades a southern pad as one to the south shades a northern pad; on the
  // equinox both have the same sun.
  const auto job_at = [](double latitude_deg) {
    Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 3, 3))});
    job.site.latitude_deg = latitude_deg;
    job.pour.date = Date(2026, 3, 20);
    job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(8));
    Obstacle wall;
    wall.kind = ObstacleKind::wall;
    const double y_m = latitude_deg > 0.0 ? -1.0 : 4.0;
    wall.from = {-10.0, y_m};
    wall.to = {13.0, y_m};
    wall.height_m = 3.0;
    job.obstacles = {wall};
    return job;
  };
  const Job north = job_at(45.0);
  const Job south = job_at(-45.0);
  const auto north_plan = plan_of(north).plan;
  const auto south_plan = plan_of(south).plan;
  const double north_min = minutes_in(north, north_plan.zones[0].whole.initial_set);
  const double south_min = minutes_in(south, south_plan.zones[0].whole.initial_set);
  MESSAGE("initial set after start, 45 N and 45 S: ", north_min, " and ", south_min, " min");
  CHECK(std::abs(north_min - south_min) < 5.0);
  CHECK(north_plan.zones[0].whole.sunlit_fraction ==
        doctest::Approx(south_plan.zones[0].whole.sunlit_fraction).epsilon(0.05));
}

TEST_CASE("a zone in the sun all morning is ready before its twin in the shade") {
  Job job =
      test::sample_job({test::zone_named("sun", test::rectangle(0, 0, 3, 3), Finish::stamp),
                        test::zone_named("shade", test::rectangle(0, 20, 3, 3), Finish::stamp)});
  for (Zone& zone : job.zones) zone.placed_at = job.pour.start;
  Obstacle wall;
  // The morning sun is in the east.
  wall.from = {3.5, 17.0};
  wall.to = {3.5, 40.0};
  wall.height_m = 12.0;
  Obstacle south = wall;  // where the sun is at noon
  south.from = {-20.0, 19.0};
  south.to = {3.5, 19.0};
  job.obstacles = {wall, south};
  const Planned planned = plan_of(job);
  const auto& sun = planned.plan.zones[0].whole;
  const auto& shade = planned.plan.zones[1].whole;
  CHECK(sun.sunlit_fraction > 0.95);
  CHECK(shade.sunlit_fraction < 0.05);
  CHECK(*sun.initial_set < *shade.initial_set);
  CHECK(*test::window_of(sun, Operation::stamp).closes <
        *test::window_of(shade, Operation::stamp).closes);
}

TEST_CASE("the same job in US and in metric units gives the same minutes") {
  const Job us = read(us_twin);
  const Job si = read(si_twin);
  const auto us_plan = plan_of(us).plan;
  const auto si_plan = plan_of(si).plan;
  const PartPlan& a = us_plan.zones[0].whole;
  const PartPlan& b = si_plan.zones[0].whole;
  CHECK(to_minute(*a.initial_set) == to_minute(*b.initial_set));
  CHECK(to_minute(*a.final_set) == to_minute(*b.final_set));
  REQUIRE(a.windows.size() == b.windows.size());
  for (std::size_t i = 0; i < a.windows.size(); ++i) {
    CAPTURE(operation_id(a.windows[i].operation));
    REQUIRE(a.windows[i].opens.has_value() == b.windows[i].opens.has_value());
    if (a.windows[i].opens) CHECK(to_minute(*a.windows[i].opens) == to_minute(*b.windows[i].opens));
  }
}

}  // namespace slabtide
