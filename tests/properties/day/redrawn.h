#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/forecast/forecast.h"

// Plans of jobs written in different ways, compared figure by figure.

namespace slabtide::test {

/// Whether a job is small enough for a test to plan hundreds like it.
bool is_quick(const std::string& toml);

/// The plan's JSON, with bands if days are sampled; empty if the job cannot be planned.
std::optional<std::string> plan_json(const std::string& toml, std::size_t samples);

/// The same from a job and its forecast, with coarser steps than the program's.
std::optional<std::string> plan_json(const Job& job, const Forecast& forecast, std::size_t samples);

/// How the second of two plans may differ from the first.
struct Expected {
  /// Where a place of the first drawing is on the second; SI.
  std::function<Point(Point)> moved = [](Point p) { return p; };
  /// The text in the first plan that corresponds to one in the second.
  std::function<std::string(const std::string&)> read_back = [](const std::string& s) { return s; };
  bool turned = false;  ///< sides have different names
};

/// Every figure, time and text of the second plan that differs from the first.
std::vector<std::string> differences(const std::string& first, const std::string& second,
                                     const Expected& expected);

/// What is done with a random job: another text, and how its plan may differ.
using Redrawing = std::function<std::pair<std::string, Expected>(const std::string& toml)>;

/// Plans this many random jobs unchanged and redrawn, some with sampled days. Returns a line for
/// each job whose plans differ.
std::vector<std::string> faults_of_jobs(std::uint64_t first_seed, int jobs,
                                        const std::function<std::string(std::string)>& prepared,
                                        const Redrawing& resampled);

}  // namespace slabtide::test
