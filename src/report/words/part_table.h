#pragma once

#include <string>
#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// "11:00-11:55", "from 14:10" where it does not close, "none", or "-" where it does not come.
std::string window_words(const OperationWindow& window, const Job& job);

/// On eight days of ten: "11:02-12:24", or "from 11:02" where a day in ten has it too late to
/// tell; empty where it is not known how sure the time is.
std::string band_words(const std::optional<TimeBand>& band, const Job& job);

/// The times of parts side by side, one column a part, read downward in the order of the
/// day. `whole_name` heads a part without a name.
std::string part_table(const std::vector<const PartPlan*>& parts, Finish finish,
                       const std::string& whole_name, const Job& job);

}  // namespace slabtide
