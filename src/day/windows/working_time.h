#pragma once

#include "slabtide/core/civil_time.h"
#include "slabtide/day/practice/crew_practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The first time at or after `at`, on a day after the pour's, at which washing or sealing can
/// begin.
UtcTime next_working_time(UtcTime at, const Job& job, const WorkHours& hours);

/// Whether it is within the hours of a working day, the pour's too.
bool is_in_working_hours(UtcTime at, const Job& job, const WorkHours& hours);

}  // namespace slabtide
