// Which start leaves the crew the longest time for brooming? The same pour is planned through the
// library with five different starts.
//
//   cmake -S . -B build && cmake --build build && build/best_start

#include <iostream>
#include <optional>
#include <stdexcept>

#include <slabtide/core/units.h>
#include <slabtide/day/plan/day_plan.h>
#include <slabtide/weather/forecast/high_low_day.h>

namespace st = slabtide;

namespace {

/// A pad of 20 by 20 ft, to be broomed, on a day described by its high and low.
st::Job pad_poured_at(int hour, const st::TimeZone& zone) {
  st::Job job;
  job.site.latitude_deg = 37.7;
  job.site.longitude_deg = -89.2;
  job.site.time_zone = zone;
  job.pour.date = st::Date(2026, 7, 9);
  const st::LocalTime start(job.pour.date, boost::posix_time::hours(hour));
  job.pour.start = zone.utc_from_local(start).utc;
  job.pour.placing_sequence = {"pad"};
  st::TypedWeather weather;
  weather.high_c = st::celsius_from_fahrenheit(88);
  weather.low_c = st::celsius_from_fahrenheit(67);
  weather.dew_point_c = st::celsius_from_fahrenheit(62);
  weather.wind_10m_m_s = st::m_s_from_mph(8);
  job.weather = weather;
  job.mix.temperature = st::celsius_from_fahrenheit(82);
  const double side_m = st::m_from_ft(20);
  st::Zone pad;
  pad.name = "pad";
  pad.outline = {{0.0, 0.0}, {side_m, 0.0}, {side_m, side_m}, {0.0, side_m}};
  pad.thickness_m = st::m_from_in(4);
  pad.finish = st::Finish::broom;
  job.zones = {pad};
  return job;
}

/// If the library refuses something it gives the reasons.
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

}  // namespace

int main() try {
  const auto loaded = st::TimeZone::load("America/Chicago");
  if (!loaded.zone) throw std::runtime_error(loaded.error.message);
  for (int hour = 5; hour <= 13; hour += 2) {
    const st::DayPlan day = plan(pad_poured_at(hour, *loaded.zone));
    const st::OperationWindow* broom = day.zones.front().whole.window(st::Operation::broom);
    // A time is absent if it does not happen before the forecast ends.
    if (broom == nullptr || !broom->opens || !broom->closes) continue;
    std::cout << "poured at " << hour << ": broom " << st::clock_time(*broom->opens, *loaded.zone)
              << " to " << st::clock_time(*broom->closes, *loaded.zone) << "\n";
  }
} catch (const std::exception& problem) {
  std::cerr << problem.what() << "\n";
  return 1;
}
