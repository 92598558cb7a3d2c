#pragma once

#include <iosfwd>
#include <optional>

#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/day/uncertainty/ensemble.h"
#include "slabtide/request/plan/load_job.h"

namespace slabtide {

/// Number of days sampled for the bands of a plan, unless the user gives one.
inline constexpr std::size_t usual_samples = 200;

/// Plans a loaded job, without bands; `threads` as in SolverSettings. Absent if it cannot be
/// planned; `findings` then says why.
std::optional<PlannedPour> plan_loaded(LoadedJob loaded, std::ostream& findings, int threads = 0);

/// Loads and plans the requested job, as `load_job` and `plan_loaded` do. Every report of a day
/// starts here.
std::optional<PlannedPour> plan_request(const JobRequest& request, const Sources& sources,
                                        std::ostream& findings, int threads = 0);

/// The pour with bands from `settings.samples` sampled days. If something was noted, it is first
/// planned again to agree with that. Unchanged for 0 days.
PlannedPour with_uncertainty(PlannedPour pour, const EnsembleSettings& settings);

}  // namespace slabtide
