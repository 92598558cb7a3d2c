// How sure a plan is: reads a job file, plans it, and samples sixty possible days. Each time is
// printed together with the times that one day in ten is before, and one in ten after.
//
//   cmake -S . -B build && cmake --build build && build/how_sure JOB.toml

#include <fstream>
#include <iostream>
#include <optional>
#include <sstream>
#include <stdexcept>

#include <slabtide/day/uncertainty/bands.h>
#include <slabtide/job/reading/read_job.h>
#include <slabtide/weather/forecast/high_low_day.h>

namespace st = slabtide;

namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error(path + ": cannot be read");
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// The value, or every finding with its line and a caret, as the program shows them.
template <class T>
T value_of(st::Parsed<T> reading, const std::string& path, const std::string& text) {
  if (!reading.ok()) throw std::runtime_error(st::render_all(reading.diagnostics, path, text));
  return std::move(*reading.value);
}

/// The plan with bands. The job file must give the weather as a typed high and low.
st::DayPlan plan_with_bands(const st::Job& job) {
  const auto* weather = std::get_if<st::TypedWeather>(&job.weather);
  if (weather == nullptr) throw std::runtime_error("the job file types no day");
  const st::Forecast forecast = st::high_low_forecast(*weather, job.site, job.pour.date);
  const auto series = value_of(st::WeatherSeries::from_forecast(forecast), "the day", "");
  const st::Practice practice = st::default_practice();
  const auto run =
      value_of(st::run_pour(job, series, practice, st::SolverSettings{}), "the pour", "");
  const st::DayPlan plan = st::plan_day(job, run, practice);
  st::EnsembleSettings settings;
  settings.samples = 60;
  const st::SampleScale scale = st::sample_scale(job, run, forecast, practice.spread);
  const st::DayModel model(job, run, plan, practice, scale);
  return st::with_bands(plan, job, st::sample_days(model, settings));
}

/// A time is absent if on that many days it does not happen before the forecast ends.
std::string clock(const std::optional<st::UtcTime>& time, const st::TimeZone& zone) {
  return time ? st::clock_time(*time, zone) : "-";
}

}  // namespace

int main(int count, char** words) try {
  if (count != 2) throw std::runtime_error("usage: how_sure JOB.toml");
  const std::string text = text_of(words[1]);
  const st::Job job = value_of(st::read_job(text), words[1], text);
  const st::TimeZone& zone = job.site.time_zone;
  for (const st::ZonePlan& planned : plan_with_bands(job).zones) {
    const auto& band = planned.whole.initial_band;
    std::cout << planned.name << ": initial set " << clock(planned.whole.initial_set, zone);
    if (band) std::cout << ", " << clock(band->early, zone) << " to " << clock(band->late, zone);
    std::cout << "\n";
  }
} catch (const std::exception& problem) {
  std::cerr << problem.what() << "\n";
  return 1;
}
