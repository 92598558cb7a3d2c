#include "slabtide/request/plan/load_job.h"

#include <algorithm>
#include <filesystem>
#include <ostream>

#include <fmt/format.h>
#include <boost/algorithm/string/classification.hpp>
#include <boost/algorithm/string/split.hpp>
#include <boost/algorithm/string/trim.hpp>

#include "core/utf8.h"
#include "day/pour/pour_span.h"
#include "job/geometry/placing_sequence.h"
#include "job/records/read_journal.h"
#include "moment.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "weather/readers/read_forecast.h"
#include "weather/site/site_air.h"

namespace slabtide {

namespace {

namespace fs = std::filesystem;

/// Splits "walk, pad" into its names.
std::vector<std::string> split_names(const std::string& text) {
  std::vector<std::string> names;
  boost::algorithm::split(names, text, boost::algorithm::is_any_of(","));
  for (std::string& name : names) boost::algorithm::trim(name);
  return names;
}

/// What is wrong with a placing sequence; empty if nothing is.
std::string order_fault(const std::vector<std::string>& order,
                        const std::vector<std::string>& zones) {
  const std::vector<ZoneNameFault> names = zone_name_faults(order, zones);
  if (!names.empty()) {
    const ZoneNameFault& first = names.front();
    return first.next_step.empty() ? first.message
                                   : fmt::format("{}; {}", first.message, first.next_step);
  }
  const std::vector<std::string> left_out = zones_left_out(order, zones);
  if (left_out.empty()) return {};
  return fmt::format("leaves out the zone \"{}\"; name every zone once", left_out.front());
}

/// A text and the path that messages give for it.
struct NamedText {
  std::string path;
  std::string text;
};

/// Holds what has been loaded so far: each step fills in its part, or reports what is wrong and
/// stops.
class Loader {
 public:
  Loader(const JobRequest& request, const Sources& sources, std::ostream& err)
      : request_(request), sources_(sources), err_(err) {}

  bool read_job_file() {
    auto file = read(request_.path);
    if (!file) return false;
    Parsed<Job> reading = read_job(file->text, sources_.time_zone);
    if (!take(reading, *file)) return false;
    path_ = file->path;
    text_ = std::move(file->text);
    job_ = std::move(*reading.value);
    return true;
  }

  bool read_own_journal() {
    const std::string path = journal_path(path_);
    if (sources_.is_missing(path)) return true;
    auto file = read(path);
    if (!file) return false;
    Parsed<Journal> reading = read_journal(file->text, job_);
    if (!take(reading, *file)) return false;
    journal_ = std::move(*reading.value);
    return true;
  }

  /// Reads everything that does not depend on where the job came from.
  bool read_settings() {
    return read_units() && read_clock() && read_order() && read_practice_files() &&
           read_weather() && read_now();
  }

  void take_job(Job job) { job_ = std::move(job); }

  /// Reads what earlier pours of the mix and at the site have shown, for a job that names its mix.
  bool read_book() {
    if (job_.mix.name.empty()) return true;
    const auto book = load_book(book_path(request_), sources_, err_);
    return book && start_from(*book);
  }

  bool start_from(const MixBook& book) {
    const BookedMix* const known = book.find(job_.mix.name);
    if (known != nullptr) job_.mix.learned = learned_set(*known);
    job_.site.learned_air = learned_air(book, job_.site.name);
    return true;
  }

  bool read_units() {
    const auto& units = request_.units;
    if (!units) return true;
    if (*units != "us" && *units != "si") {
      return refuse(fmt::format("--units: got '{}', expected us or si", *units));
    }
    job_.units = *units == "us" ? UnitSystem::us : UnitSystem::si;
    return true;
  }

  bool read_clock() {
    const auto& text = request_.clock;
    if (!text) return true;
    job_.hours = parse_hour_count(*text);
    return job_.hours || refuse(fmt::format("--clock: got '{}', expected 12 or 24", *text));
  }

  bool read_order() {
    const std::vector<std::string>& said = request_.order;
    if (said.empty()) return true;
    std::vector<std::string> zones;
    for (const Zone& zone : job_.zones) zones.push_back(zone.name);
    const std::vector<std::string> order = said.size() == 1 ? split_names(said.front()) : said;
    const std::string fault = order_fault(order, zones);
    if (!fault.empty()) return refuse(fmt::format("--order: {}", fault));
    if (const auto early = placed_too_early(order, job_.zones)) {
      return refuse(fmt::format(R"(--order: places "{}" before "{}", which it comes after)",
                                early->zone, early->after));
    }
    job_.pour.placing_sequence = order;
    return true;
  }

  bool read_practice_files() {
    practice_ = default_practice();
    if (request_.practice) {
      auto file = read(*request_.practice);
      if (!file) return false;
      Parsed<Practice> reading = read_practice(file->text, practice_);
      if (!take(reading, *file)) return false;
      practice_ = *reading.value;
    }
    return read_own_practice();
  }

  bool read_weather() {
    if (request_.forecast) job_.weather = ForecastFile{*request_.forecast, {}};
    if (const auto path = forecast_path(request_, job_)) return read_forecast_file(*path);
    forecast_ = high_low_forecast(std::get<TypedWeather>(job_.weather), job_.site, job_.pour.date);
    return make_series({"weather", {}});
  }

  /// Sets the current time, and from it the age of the forecast.
  bool read_now() {
    now_ = sources_.now();
    if (const auto& text = request_.now) {
      const auto moment = read_moment(*text, job_.site.time_zone);
      if (!moment) return refuse(moment_fault(*text));
      now_ = *moment;
    }
    if (forecast_.issued) tell_age(*forecast_.issued);
    return true;
  }

  LoadedJob result() {
    return {std::move(path_),     std::move(text_), std::move(job_),     practice_,
            std::move(forecast_), *series_,         std::move(journal_), now_,
            forecast_age_h_};
  }

 private:
  std::optional<NamedText> read(const std::string& path) {
    FileText file = sources_.read(path);
    if (file.text) return NamedText{path, std::move(*file.text)};
    err_ << fmt::format("{}: {}\n", printable(path), file.error.message);
    if (!file.error.next_step.empty()) err_ << "  " << file.error.next_step << "\n";
    return std::nullopt;
  }

  template <class T>
  bool take(const Parsed<T>& reading, const NamedText& file) {
    err_ << render_all(reading.diagnostics, file.path, file.text);
    return reading.ok();
  }

  /// A forecast issued in the future has no age. Small differences between clocks are allowed.
  void tell_age(UtcTime issued) {
    constexpr double clocks_differ_h = 1.0;
    const double age_h = seconds_between(issued, now_) / seconds_per_hour;
    if (age_h >= -clocks_differ_h) {
      forecast_age_h_ = std::max(age_h, 0.0);
      return;
    }
    err_ << printable(path_.empty() ? "slabtide" : path_)
         << fmt::format(
                ": warning: the forecast says it was issued {}, which is still to come\n"
                "  check the date of this computer and of the forecast; its age is left out\n",
                clock_of(job_).date_time(issued));
  }

  bool refuse(const std::string& message) {
    err_ << "slabtide: " << printable(message) << "\n";
    return false;
  }

  /// Findings in the job's [practice] table are shown at its place in the file: the text of the
  /// table that the reader gets starts with as many blank lines as come before it.
  bool read_own_practice() {
    const std::string& own = job_.practice_overrides_toml;
    if (!own.empty()) {
      Parsed<Practice> reading = read_practice(own, practice_);
      if (!take(reading, {path_, own})) return false;
      practice_ = *reading.value;
    }
    practice_ = with_labels(practice_, job_.finish_work);
    return true;
  }

  bool read_forecast_file(const std::string& path) {
    auto file = read(path);
    if (!file) return false;
    Parsed<Forecast> reading = read_forecast(file->text, clock_of(job_));
    if (!take(reading, *file)) return false;
    forecast_ = std::move(*reading.value);
    return make_series(*file);
  }

  bool make_series(const NamedText& file) {
    if (job_.site.learned_air) forecast_ = at_site(std::move(forecast_), *job_.site.learned_air);
    Parsed<WeatherSeries> reading = WeatherSeries::from_forecast(forecast_);
    if (!take(reading, file)) return false;
    series_ = std::move(reading.value);
    assume_concrete_temperature(job_, *series_);
    return true;
  }

  const JobRequest& request_;
  const Sources& sources_;
  std::ostream& err_;
  std::string path_;
  std::string text_;
  Job job_;
  Practice practice_;
  Forecast forecast_;
  std::optional<WeatherSeries> series_;
  Journal journal_;
  UtcTime now_;
  std::optional<double> forecast_age_h_;
};

}  // namespace

std::string journal_path(const std::string& job_path) {
  return fs::path(job_path).replace_extension(".journal").string();
}

std::string book_path(const JobRequest& request) {
  if (request.book) return *request.book;
  return fs::path(request.path).replace_filename("mix-book.toml").string();
}

std::optional<std::string> forecast_path(const JobRequest& request, const Job& job) {
  if (request.forecast) return request.forecast;
  const auto* const named = std::get_if<ForecastFile>(&job.weather);
  if (named == nullptr) return std::nullopt;
  return (fs::path(request.path).parent_path() / named->path).string();
}

std::optional<MixBook> load_book(const std::string& path, const Sources& sources,
                                 std::ostream& findings) {
  if (sources.is_missing(path)) return MixBook{};
  const FileText file = sources.read(path);
  if (!file.text) {
    findings << fmt::format("{}: {}\n  {}\n", printable(path), file.error.message,
                            file.error.next_step);
    return std::nullopt;
  }
  Parsed<MixBook> reading = read_mix_book(*file.text);
  findings << render_all(reading.diagnostics, path, *file.text);
  return std::move(reading.value);
}

std::optional<LoadedJob> load_job(const JobRequest& request, const Sources& sources,
                                  std::ostream& findings) {
  Loader loader(request, sources, findings);
  if (!loader.read_job_file() || !loader.read_own_journal() || !loader.read_book() ||
      !loader.read_settings()) {
    return std::nullopt;
  }
  return loader.result();
}

std::optional<LoadedJob> load_job(const JobRequest& request, const Sources& sources,
                                  const MixBook& book, std::ostream& findings) {
  Loader loader(request, sources, findings);
  if (!loader.read_job_file() || !loader.read_own_journal() || !loader.start_from(book) ||
      !loader.read_settings()) {
    return std::nullopt;
  }
  return loader.result();
}

std::optional<LoadedJob> complete_job(Job job, const JobRequest& request, const Sources& sources,
                                      std::ostream& findings) {
  Loader loader(request, sources, findings);
  loader.take_job(std::move(job));
  if (!loader.read_practice_files() || !loader.read_weather() || !loader.read_now()) {
    return std::nullopt;
  }
  return loader.result();
}

}  // namespace slabtide
