#pragma once

#include "slabtide/day/field/check_back.h"
#include "slabtide/job/records/mix_book.h"

namespace slabtide {

/// What a finished pour says about its mix: the factor on the described set times that best
/// reproduces the observations of the set, given the times of placing and the concrete and air
/// temperatures that were noted.
///
/// A resistance is reached at a set age proportional to the set times (`resistance_psi`), so each
/// observation gives the factor from the set age at its time. The median is used, because one wrong
/// observation hardly affects it. The columns are solved again with the factor, since concrete that
/// sets later also warms up later, until it stays the same. Status: ours.
///
/// `late_min` compares the events with `run` as it is, which is the plan that was followed.
BookedPour learn_pour(const Journal& journal, const Job& job, const PourRun& run,
                      const DayPlan& plan, const Practice& practice);

}  // namespace slabtide
