#pragma once

#include <cstddef>
#include <iosfwd>
#include <optional>

#include "slabtide/day/days/planned_days.h"
#include "slabtide/request/plan/job_request.h"
#include "slabtide/request/plan/sources.h"

namespace slabtide {

/// Days drawn for the best start of each day, unless the user gives their number: enough for a
/// share of the days.
inline constexpr std::size_t usual_days_samples = 60;

/// Loads the requested job and its forecast, as `load_job` does, and plans every day of the
/// forecast. Absent if the weather is not a forecast or no day is left to plan; `findings` then
/// says why, and what to do.
std::optional<PlannedDays> days_request(const JobRequest& request, const Sources& sources,
                                        std::ostream& findings, const DaysSettings& settings);

}  // namespace slabtide
