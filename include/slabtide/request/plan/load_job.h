#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"
#include "slabtide/job/records/mix_book.h"
#include "slabtide/request/plan/job_request.h"
#include "slabtide/request/plan/sources.h"
#include "slabtide/weather/forecast/forecast.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

/// A job with its weather and practice, ready to be planned.
struct LoadedJob {
  std::string path;
  std::string text;
  Job job;
  Practice practice;
  Forecast forecast;
  WeatherSeries series;
  Journal journal;  ///< what has been noted so far; empty if nothing
  UtcTime now;      ///< JobRequest::now, or else Sources::now
  /// Hours from the forecast's issue until now; absent if the forecast does not give its issue.
  std::optional<double> forecast_age_h;
};

/// The path of a job's journal: beside the job, "pad.journal" for "pad.toml".
std::string journal_path(const std::string& job_path);

/// The path of a request's mix book: the one it names, or the one beside the job.
std::string book_path(const JobRequest& request);

/// The path of the forecast: the request's, or the one that the job names; empty if the job gives
/// the weather itself.
std::optional<std::string> forecast_path(const JobRequest& request, const Job& job);

/// The book, or an empty one if there is no file. Absent if it cannot be read; the findings then
/// went to `findings`.
std::optional<MixBook> load_book(const std::string& path, const Sources& sources,
                                 std::ostream& findings);

/// Reads the job, its journal and what the mix book knows about its mix and site, then the
/// request's practice and the job's own [practice], then the weather. Absent if something is wrong.
/// All findings, including warnings, go to `findings` with line and column.
std::optional<LoadedJob> load_job(const JobRequest& request, const Sources& sources,
                                  std::ostream& findings);

/// The same, but uses this book instead of the request's.
std::optional<LoadedJob> load_job(const JobRequest& request, const Sources& sources,
                                  const MixBook& book, std::ostream& findings);

/// Adds weather and practice to a job that did not come from a text.
std::optional<LoadedJob> complete_job(Job job, const JobRequest& request, const Sources& sources,
                                      std::ostream& findings);

}  // namespace slabtide
