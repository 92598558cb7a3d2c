#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "slabtide/cli/guard/write_guard.h"
#include "slabtide/cli/line/command_line.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"
#include "slabtide/job/records/mix_book.h"
#include "slabtide/weather/forecast/forecast.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

/// A job with its weather and practice, ready to compute.
struct LoadedJob {
  std::string path;
  std::string text;
  Job job;
  Practice practice;
  Forecast forecast;
  WeatherSeries series;
  Journal journal;  ///< what was noted so far; empty where there is no file
  UtcTime now;      ///< --now, or the clock
  /// Hours from the forecast's issue to now; absent where it does not say.
  std::optional<double> forecast_age_h;
};

/// What went well, or the exit code after the findings were printed.
struct JobLoading {
  std::optional<LoadedJob> loaded;
  int exit_code = exit_done;
};

/// Where the readings of a job are noted: beside it, "pad.journal" for "pad.toml".
std::string journal_path(const std::string& job_path);

/// The forecast file of a job: --forecast, or what the job names; empty where the job says the
/// weather itself.
std::optional<std::string> forecast_path(const ParsedLine& line, const Job& job,
                                         const std::string& job_path);

/// What `load_job` reads for the jobs of the line: jobs, journals, forecasts, mix books, practice.
/// Of a job that does not read, what is known without it.
std::vector<ReadFile> files_read(const ParsedLine& line);

/// The options every command that reads a job shares: --forecast, --practice, --units,
/// --order, --book, --now.
std::vector<Option> job_options();

/// Reads the job file, its journal and what the mix book knows of its mix and its site, then
/// --practice and the job's own [practice], then the weather it names (or --forecast). Findings go
/// to `err`.
JobLoading load_job(const std::string& path, const ParsedLine& line, std::ostream& err);

/// The same, but for what the book knows: this one, in place of the file.
JobLoading load_job(const std::string& path, const ParsedLine& line, const MixBook& book,
                    std::ostream& err);

/// Weather and practice for a job that did not come from a file.
JobLoading complete_job(Job job, const ParsedLine& line, std::ostream& err);

}  // namespace slabtide
