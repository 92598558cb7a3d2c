#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/field/check_back.h"
#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/request/plan/sources.h"

namespace slabtide {

/// Every observation of the pour's journal with what the plan says about it, in order of time.
std::vector<CheckedObservation> checked_by_hour(const PlannedPour& pour);

/// What a mix book learns from a finished pour.
struct Lesson {
  /// The book's text with the pour in it; absent where it is written in a way that nothing can be
  /// put into (`with_pour`).
  std::optional<std::string> book;
  std::string told;  ///< "six sack, 0.45, set times by 1.11, from 2 readings"
};

/// Learns the job at `path`, which was read as `job`: its mix has a name, and something was noted.
/// It is planned by what the book knew before its day, so that a pour that is learned again gives
/// the same result, whatever was learned since. Absent if it cannot be planned; `findings` then
/// says why. `threads` as in SolverSettings.
std::optional<Lesson> learn_job(const std::string& path, const Job& job, const std::string& book,
                                const Sources& sources, std::ostream& findings, int threads = 0);

}  // namespace slabtide
