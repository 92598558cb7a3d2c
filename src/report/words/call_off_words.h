#pragma once

#include <string>

#include "slabtide/core/civil_time.h"
#include "slabtide/day/practice/days_rules.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// "by 4:25 AM, 2 h before the first load is batched at 6:25 AM", with the weekday where a time is
/// on another day than `date`.
std::string call_off_words(UtcTime first_batched, Date date, const Job& job,
                           const DaysRules& rules);

}  // namespace slabtide
