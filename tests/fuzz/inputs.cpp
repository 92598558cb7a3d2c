#include "fuzz/inputs.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <optional>

#include "fuzz/whole_job.h"
#include "job/records/journal_line.h"
#include "job/records/mix_book_edit.h"
#include "job/records/read_journal.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/weather/site/weather_series.h"
#include "weather/readers/forecast_csv.h"
#include "weather/readers/json_value.h"
#include "weather/readers/nws_grid.h"
#include "weather/readers/nws_hourly.h"
#include "weather/readers/open_meteo.h"
#include "weather/readers/read_forecast.h"

namespace slabtide::fuzz {
namespace {

constexpr double hour_s = 3600.0;

void require(bool holds, const char* promise) {
  if (holds) return;
  std::fputs(promise, stderr);
  std::abort();
}

/// A zone with two clock changes a year, so that local times may be skipped or repeated.
const TimeZone& zone() {
  static const TimeZone central =
      TimeZone::from_posix_rule("America/Chicago", "CST6CDT,M3.2.0,M11.1.0").zone.value();
  return central;
}

template <class T>
void check_findings(const Parsed<T>& reading, std::string_view text) {
  require(reading.ok() != has_error(reading.diagnostics), "a value or an error, not both\n");
  const auto lines =
      static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + std::size_t{1};
  for (const Diagnostic& diagnostic : reading.diagnostics) {
    require(!diagnostic.message.empty(), "a finding says what is wrong\n");
    if (diagnostic.where) {
      require(diagnostic.where->line >= 1 && diagnostic.where->line <= lines &&
                  diagnostic.where->column >= 1,
              "a finding lies within the text\n");
    }
  }
  require(render_all(reading.diagnostics, "input", text).empty() == reading.diagnostics.empty(),
          "findings are shown\n");
}

void check_value(const std::optional<double>& value, double min, double greatest) {
  require(!value || (*value >= min && *value <= greatest), "values are possible\n");
}

Clock clock() { return {zone(), {}}; }

void check_hours(const Forecast& forecast) {
  require(!forecast.hours.empty(), "a forecast has hours\n");
  const ForecastHour* before = nullptr;
  for (const ForecastHour& hour : forecast.hours) {
    require(before == nullptr || before->at < hour.at, "hours rise\n");
    before = &hour;
    check_value(hour.air_c, -90.0, 60.0);
    check_value(hour.dew_point_c, -90.0, hour.air_c.value_or(40.0));
    check_value(hour.wind_10m_m_s, 0.0, 100.0);
    check_value(hour.gust_10m_m_s, 0.0, 120.0);
    check_value(hour.cloud_fraction, 0.0, 1.0);
    check_value(hour.solar_w_m2, 0.0, 1500.0);
    check_value(hour.rain_mm, 0.0, 1.0e6);
    check_value(hour.rain_chance, 0.0, 1.0);
  }
}

void check_forecast(const Parsed<Forecast>& reading, std::string_view text) {
  check_findings(reading, text);
  if (reading.ok()) check_hours(*reading.value);
}

using JsonReader = Parsed<Forecast> (*)(const JsonValue&, const Clock&);

void try_json(std::string_view text, JsonReader read) {
  const Parsed<JsonValue> json = parse_json(text);
  check_findings(json, text);
  if (json.ok()) check_forecast(read(*json.value, clock()), text);
}

void check_series(const WeatherSeries& series) {
  const double span_s = seconds_between(series.first(), series.last());
  constexpr int samples = 50;
  for (int i = -1; i <= samples + 1; ++i) {
    const UtcTime time = after_seconds(series.first(), span_s * i / samples);
    const WeatherSample sample = series.at(time);
    require(std::isfinite(sample.air_c) && std::isfinite(sample.wind_10m_m_s),
            "samples are finite\n");
    require(sample.dew_point_c <= sample.air_c + 1e-9, "no dew point above the air\n");
    require(sample.rain_mm_h >= 0.0, "no negative rain\n");
  }
  const double mean_c = series.mean_air_c(series.first(), after_seconds(series.first(), hour_s));
  require(std::isfinite(mean_c), "means are finite\n");
}

}  // namespace

void try_forecast_csv(std::string_view text) {
  check_forecast(read_forecast_csv(text, clock()), text);
}

void try_nws_hourly(std::string_view text) { try_json(text, read_nws_hourly); }
void try_nws_grid(std::string_view text) { try_json(text, read_nws_grid); }
void try_open_meteo(std::string_view text) { try_json(text, read_open_meteo); }

void try_forecast(std::string_view text) {
  const Parsed<Forecast> reading = read_forecast(text, clock());
  check_forecast(reading, text);
  if (!reading.ok()) return;
  const Parsed<WeatherSeries> series = WeatherSeries::from_forecast(*reading.value);
  if (series.ok()) check_series(*series.value);
}

void try_job(std::string_view text) { check_findings(read_job(text), text); }

void try_journal(std::string_view text) {
  Job job;
  job.site.time_zone = zone();
  job.pour.date = Date(2026, 5, 14);
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(13));
  for (const char* name : {"landing", "the \"west\" walk"}) {
    job.zones.emplace_back();
    job.zones.back().name = name;
  }
  const Parsed<Journal> journal = read_journal(text, job);
  check_findings(journal, text);
  if (!journal.ok()) return;
  std::string again;
  for (const Observation& reading : journal.value->readings) again += journal_line(reading, job);
  const Parsed<Journal> read_again = read_journal(again, job);
  require(read_again.ok() && read_again.value->readings.size() == journal.value->readings.size(),
          "what is read can be written and read again\n");
}

void try_practice(std::string_view text) {
  static const Practice base = default_practice();
  const Parsed<Practice> practice = read_practice(text, base);
  check_findings(practice, text);
  if (!practice.ok()) return;
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Operation::tooled_joint); ++i) {
    const ResistanceWindow& window = practice.value->window(static_cast<Operation>(i));
    require(window.opens_psi > 0.0 && window.opens_psi < window.closes_psi,
            "windows open before they close\n");
  }
}

void try_mix_book(std::string_view text) {
  const Parsed<MixBook> book = read_mix_book(text);
  check_findings(book, text);
  if (!book.ok()) return;
  for (const BookedMix& mix : book.value->mixes) {
    const std::optional<LearnedSet> learned = learned_set(mix);
    require(!learned || (std::isfinite(learned->set_factor) && learned->set_factor > 0.0),
            "set factors are possible\n");
    check_value(set_factor_spread(mix), 0.0, 3.0);
    for (const BookedPour& pour : mix.pours) {
      const std::optional<LearnedAir> air = learned_air(*book.value, pour.site);
      if (air) check_value(air->air_k, -20.0, 20.0);
    }
  }
  const std::string written = mix_book_text(*book.value);
  const Parsed<MixBook> again = read_mix_book(written);
  require(again.ok() && mix_book_text(*again.value) == written,
          "what is read can be written and read again\n");
}

void try_whole_job(std::string_view bytes) {
  const DrawnJob drawn = drawn_job(test::ByteSource(std::string(bytes)));
  const std::vector<std::string> faults = job_faults(drawn.job, drawn.run);
  if (faults.empty()) return;
  std::fputs((drawn.job.toml + drawn.job.forecast_csv).c_str(), stderr);
  require(false, (drawn.run.command + ": " + faults.front() + "\n").c_str());
}

}  // namespace slabtide::fuzz
