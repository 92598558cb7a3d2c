#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

// What the base under a slab is like when concrete covers it.

namespace slabtide {
namespace {

Job noon_job(BaseKept kept = BaseKept::bare) {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 4, 4))});
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(13));
  job.zones[0].base.kept = kept;
  return job;
}

double base_top_c(const Job& job) {
  const test::PlannedDay day(job);
  const std::vector<GroundPoint>& ground = day.run().columns.front().column.ground;
  REQUIRE(!ground.empty());
  CHECK(ground.front().depth_m == 0.0);
  return ground.front().temperature_c;
}

double initial_set_s(const Job& job) {
  const test::PlannedDay day(job);
  return seconds_between(job.pour.start, day.plan().zones[0].whole.initial_set.value());
}

TEST_CASE("a bare base in the afternoon sun is far warmer than the mean air, and hastens set") {
  const test::PlannedDay day(noon_job());
  const double mean_c = day.run().ground_c;
  CHECK(base_top_c(noon_job()) > mean_c + 12.0);
  Job measured = noon_job();
  measured.site.ground_c = mean_c;
  CHECK(initial_set_s(noon_job()) < initial_set_s(measured) - 15.0 * seconds_per_minute);
}

TEST_CASE("shade, water and tarps keep a base cooler than the sun leaves it") {
  const double bare_c = base_top_c(noon_job());
  CHECK(base_top_c(noon_job(BaseKept::shaded)) < bare_c - 8.0);
  CHECK(base_top_c(noon_job(BaseKept::wet)) < bare_c - 8.0);
  CHECK(base_top_c(noon_job(BaseKept::covered)) < bare_c - 4.0);
}

TEST_CASE("by morning a bare base has given its heat to the night sky") {
  Job early = noon_job();
  early.pour.start = UtcTime(early.pour.date, boost::posix_time::hours(5));
  const test::PlannedDay day(early);
  CHECK(base_top_c(early) < day.run().ground_c);
  Job under_tarps = early;
  under_tarps.zones[0].base.kept = BaseKept::covered;
  CHECK(base_top_c(under_tarps) > base_top_c(early) + 1.0);
}

TEST_CASE("a measured ground temperature beats what would be computed") {
  Job measured = noon_job();
  measured.site.ground_c = 11.0;
  const test::PlannedDay day(measured);
  CHECK(day.run().ground_c == 11.0);
  for (const PouredColumn& column : day.run().columns) CHECK(column.column.ground.empty());
}

TEST_CASE("the base under a wall's shade is cooler than beside it") {
  Job job = noon_job();
  Obstacle wall;
  wall.from = {-20.0, -0.5};
  wall.to = {24.0, -0.5};
  wall.height_m = 3.0;
  job.obstacles = {wall};
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(10));
  const test::PlannedDay day(job);
  const auto& columns = day.run().columns;
  const auto by_top = [](const PouredColumn& a, const PouredColumn& b) {
    return a.column.ground.front().temperature_c < b.column.ground.front().temperature_c;
  };
  const auto [coolest, warmest] = std::minmax_element(columns.begin(), columns.end(), by_top);
  CHECK(warmest->column.ground.front().temperature_c >
        coolest->column.ground.front().temperature_c + 3.0);
}

TEST_CASE("a forecast that starts on the pour's morning stands for the day before, too") {
  const Job job = noon_job();
  Forecast forecast =
      high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date);
  const UtcTime morning(job.pour.date, boost::posix_time::hours(4));
  std::erase_if(forecast.hours, [&](const ForecastHour& hour) { return hour.at < morning; });
  const WeatherSeries series = WeatherSeries::from_forecast(forecast).value.value();
  const PourRun run = run_pour(job, series, default_practice(), SolverSettings{}).value.value();
  const double top_c = run.columns.front().column.ground.front().temperature_c;
  CHECK(std::abs(top_c - base_top_c(job)) < 1.5);
}

}  // namespace
}  // namespace slabtide
