#pragma once

#include <cstddef>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// Volumes left over by rounding that are no concrete.
inline constexpr double nothing_m3 = 1e-9;

/// What is ordered for a zone, its allowance included.
double ordered_m3(const Job& job, const Zone& zone);

/// What is ordered from this zone of the pour's order on, up to the next with a time of its own:
/// a run of loads, each as full as they come but the last.
double run_volume_m3(const Job& job, std::size_t from);

/// How many loads the whole pour takes, as plan_order lays them out.
std::size_t load_count(const Job& job);

}  // namespace slabtide
