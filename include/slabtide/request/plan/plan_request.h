#pragma once

#include <iosfwd>
#include <optional>

#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/day/uncertainty/ensemble.h"
#include "slabtide/request/plan/load_job.h"

namespace slabtide {

/// Days drawn for the bands of a plan where nobody says how many.
inline constexpr std::size_t usual_samples = 200;

/// The days that may come for a pour as planned.
Ensemble sampled_days(const PlannedPour& pour, const EnsembleSettings& settings);

/// Plans a job that was loaded, without bands; `threads` as SolverSettings. Absent where it cannot
/// be planned, and `findings` says why.
std::optional<PlannedPour> plan_loaded(LoadedJob loaded, std::ostream& findings, int threads = 0);

/// Loads and plans what is asked for: where every report of a day starts. As `load_job` and
/// `plan_loaded`.
std::optional<PlannedPour> plan_request(const JobRequest& request, const Sources& sources,
                                        std::ostream& findings, int threads = 0);

/// The pour with bands from `settings.samples` drawn days; where something was noted, planned again
/// for it first. As it is for 0 days.
PlannedPour with_uncertainty(PlannedPour pour, const EnsembleSettings& settings);

}  // namespace slabtide
