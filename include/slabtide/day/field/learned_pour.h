#pragma once

#include "slabtide/day/field/check_back.h"
#include "slabtide/job/records/mix_book.h"

namespace slabtide {

/// What a finished pour tells of its mix: the factor on the set times as described that makes the
/// readings of the setting come out, with the hours of placing, the concrete and the air as they
/// were noted.
///
/// A resistance is reached at a set age that stands in one proportion to the set times
/// (`resistance_psi`), so each reading gives the factor by the set age at its hour; their median
/// is taken, which one wrong reading does not move far. The columns are solved again with it, as
/// what sets later warms later, until it stays. Status: ours.
///
/// `late_min` holds the events against `run` as it stands, which is the plan that was followed.
BookedPour learn_pour(const Journal& journal, const Job& job, const PourRun& run,
                      const DayPlan& plan, const Practice& practice);

}  // namespace slabtide
