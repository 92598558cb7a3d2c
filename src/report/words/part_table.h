#pragma once

#include <string>
#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// "11:00-11:55", "from 14:10" if it does not close, "none", or "-" if it does not open.
std::string window_words(const OperationWindow& window, const Job& job);

/// Of work on the days after: "from Fri 13:59", when all of it is ready, or why not within the
/// plan.
std::string later_words(const OperationWindow& window, const Job& job);

/// On eight days out of ten: "11:02-12:24", or "from 11:02" if on one day in ten it is later than
/// the plan covers; empty if it is not known how sure the time is.
std::string band_words(const std::optional<TimeBand>& band, const Job& job);

/// The times of parts side by side, one column per part, in order of the day from top to bottom.
/// `whole_name` is the heading of a part without a name. Parts that do not fit beside the others in
/// `width` terminal columns follow below.
std::string part_table(const std::vector<const PartPlan*>& parts, Finish finish,
                       const std::string& whole_name, const Job& job, std::size_t width);

}  // namespace slabtide
