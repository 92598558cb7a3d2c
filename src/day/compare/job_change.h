#pragma once

#include <optional>
#include <string>

#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// A job with a change made, or why the change is not possible.
struct ChangedJob {
  std::optional<Job> job;
  std::string fault;
};

/// The job with what a note says: every built-in choice and every option of the job file is made
/// so. Loads are counted as they come with the note's own start, load size and trucks.
ChangedJob with_change(const Job& job, const OptionNote& note, const PlacingRates& rates);

/// Both changes in one note, under no name; empty where both change the same thing.
std::optional<OptionNote> joined_change(const OptionNote& a, const OptionNote& b);

/// `job` started this much later, including zones with their own time.
Job started_later(const Job& job, double minutes);

}  // namespace slabtide
