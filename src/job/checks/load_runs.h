#pragma once

#include <cstddef>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// Volumes below this are rounding, not concrete.
inline constexpr double nothing_m3 = 1e-9;

/// The volume ordered for a zone, including its allowance.
double ordered_m3(const Job& job, const Zone& zone);

/// The volume ordered from this position of the placing sequence up to the next zone with its own
/// placing time: a run of loads.
double run_volume_m3(const Job& job, std::size_t from);

/// How many loads of this size at most a volume takes.
std::size_t loads_of(double volume_m3, double load_size_m3);

/// How many loads the whole pour takes, laid out as plan_order does.
std::size_t load_count(const Job& job);

}  // namespace slabtide
