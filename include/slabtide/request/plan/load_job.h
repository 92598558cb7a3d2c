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

/// A job with its weather and practice, ready to compute.
struct LoadedJob {
  std::string path;
  std::string text;
  Job job;
  Practice practice;
  Forecast forecast;
  WeatherSeries series;
  Journal journal;  ///< what was noted so far; empty where there is none
  UtcTime now;      ///< JobRequest::now, or the source's
  /// Hours from the forecast's issue to now; absent where it does not say.
  std::optional<double> forecast_age_h;
};

/// Where the readings of a job are noted: beside it, "pad.journal" for "pad.toml".
std::string journal_path(const std::string& job_path);

/// The mix book of a request: its own, or the one beside the job.
std::string book_path(const JobRequest& request);

/// The forecast's path: the request's, or what the job names; empty where the job says the weather
/// itself.
std::optional<std::string> forecast_path(const JobRequest& request, const Job& job);

/// The book; an empty one where there is none. Absent where it does not read: the findings went to
/// `findings`.
std::optional<MixBook> load_book(const std::string& path, const Sources& sources,
                                 std::ostream& findings);

/// Reads the job, its journal and what the mix book knows of its mix and its site, then the
/// request's practice and the job's own [practice], then the weather. Absent where something is
/// wrong; what was found, warnings too, goes to `findings` with line and column.
std::optional<LoadedJob> load_job(const JobRequest& request, const Sources& sources,
                                  std::ostream& findings);

/// The same, but for what the book knows: this one, in place of the request's.
std::optional<LoadedJob> load_job(const JobRequest& request, const Sources& sources,
                                  const MixBook& book, std::ostream& findings);

/// Weather and practice for a job that did not come from a text.
std::optional<LoadedJob> complete_job(Job job, const JobRequest& request, const Sources& sources,
                                      std::ostream& findings);

}  // namespace slabtide
