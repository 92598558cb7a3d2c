#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/geometry.h"

// Plans of jobs written down another way, held against one another figure by figure.

namespace slabtide::test {

/// Whether a job is small enough for a suite to plan hundreds like it.
bool is_quick(const std::string& toml);

/// The plan's JSON, with bands where days are drawn; empty where the job cannot be planned.
std::optional<std::string> plan_json(const std::string& toml, std::size_t samples);

/// How the second of two plans may differ from the first.
struct Expected {
  /// Where a place of the first drawing lies on the second; SI.
  std::function<Point(Point)> moved = [](Point p) { return p; };
  /// What a text of the second reads in the first.
  std::function<std::string(const std::string&)> read_back = [](const std::string& s) { return s; };
  bool turned = false;  ///< sides have other names
};

/// Every figure, time and text of the second plan that is not what the first one has.
std::vector<std::string> differences(const std::string& first, const std::string& second,
                                     const Expected& expected);

/// What becomes of a random job: another text, and how its plan may differ.
using Redrawing = std::function<std::pair<std::string, Expected>(const std::string& toml)>;

/// Plans so many random jobs as they stand and redrawn; some with days drawn. One line for each
/// job whose plan differs.
std::vector<std::string> faults_of_jobs(std::uint64_t first_seed, int jobs,
                                        const std::function<std::string(std::string)>& prepared,
                                        const Redrawing& resampled);

}  // namespace slabtide::test
