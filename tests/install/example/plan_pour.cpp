// Plans a pour through the library: a walkway beside a house, described here instead of in a job
// file, on a day described by its high and low.
//
//   cmake -S . -B build && cmake --build build && build/plan_pour

#include <iostream>
#include <optional>
#include <stdexcept>

#include <slabtide/core/units.h>
#include <slabtide/day/plan/day_plan.h>
#include <slabtide/weather/forecast/high_low_day.h>

namespace st = slabtide;

namespace {

/// Everything is SI with °C; names contain the unit.
st::Zone walk() {
  st::Zone zone;
  zone.name = "walk";
  // x is east and y is north, from any origin: 4 ft by 40 ft, counter-clockwise.
  zone.outline = {{0.0, 0.0},
                  {st::m_from_ft(4), 0.0},
                  {st::m_from_ft(4), st::m_from_ft(40)},
                  {0.0, st::m_from_ft(40)}};
  zone.thickness_m = st::m_from_in(4);
  zone.finish = st::Finish::texture_roll;
  return zone;
}

st::Obstacle house_to_the_east() {
  st::Obstacle house;
  house.name = "house";
  house.from = {st::m_from_ft(6), 0.0};
  house.to = {st::m_from_ft(6), st::m_from_ft(20)};
  house.height_m = st::m_from_ft(20);
  return house;
}

st::Job pour_of(const st::TimeZone& zone) {
  st::Job job;
  job.site.latitude_deg = 44.9;
  job.site.longitude_deg = -91.9;
  job.site.time_zone = zone;
  job.pour.date = st::Date(2026, 5, 14);
  const st::LocalTime eight(job.pour.date, boost::posix_time::hours(8));
  job.pour.start = zone.utc_from_local(eight).utc;
  job.pour.placing_sequence = {"walk"};
  st::TypedWeather weather;
  weather.high_c = st::celsius_from_fahrenheit(66);
  weather.low_c = st::celsius_from_fahrenheit(41);
  weather.wind_10m_m_s = st::m_s_from_mph(7);
  job.weather = weather;
  job.mix.w_cm = 0.45;
  job.mix.temperature = st::celsius_from_fahrenheit(62);
  job.obstacles = {house_to_the_east()};
  job.zones = {walk()};
  return job;
}

/// The value, or what the library says is wrong.
template <class T>
T value_of(st::Parsed<T> reading) {
  if (!reading.ok()) throw std::runtime_error(st::render_all(reading.diagnostics, "pour", {}));
  return std::move(*reading.value);
}

st::DayPlan plan(const st::Job& job) {
  const st::Forecast forecast =
      st::high_low_forecast(std::get<st::TypedWeather>(job.weather), job.site, job.pour.date);
  const auto series = value_of(st::WeatherSeries::from_forecast(forecast));
  const st::Practice practice = st::default_practice();
  const auto run = value_of(st::run_pour(job, series, practice, st::SolverSettings{}));
  return st::plan_day(job, run, practice);
}

/// A time is absent if it does not happen before the forecast ends.
std::string clock(const std::optional<st::UtcTime>& time, const st::TimeZone& zone) {
  return time ? st::clock_time(*time, zone) : "-";
}

void print(const st::PartPlan& part, const st::TimeZone& zone) {
  const st::OperationWindow* texture = part.window(st::Operation::texture);
  if (texture == nullptr) return;
  std::cout << part.name << ": texture " << clock(texture->opens, zone) << " to "
            << clock(texture->closes, zone) << ", final set " << clock(part.final_set, zone)
            << "\n";
}

}  // namespace

int main() try {
  const auto loaded = st::TimeZone::load("America/Chicago");
  if (!loaded.zone) throw std::runtime_error(loaded.error.message);
  const st::Job job = pour_of(*loaded.zone);
  const st::DayPlan day = plan(job);
  for (const st::PartPlan& part : day.zones.front().parts) print(part, *loaded.zone);
  std::cout << day.zones.front().working_order << "\n";
} catch (const std::exception& problem) {
  std::cerr << problem.what() << "\n";
  return 1;
}
