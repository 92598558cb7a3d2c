#pragma once

#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// On which share of the ensemble's days `zones` freeze while they are too weak for it. Their
/// coldest surface moves from day to day as that of the same zone does on the job that the days
/// were drawn for. Precondition: there are days, and they were drawn for as many zones.
///
/// Idealises: a warmer night does as much under other blankets, or for another start, as on that
/// job. Status: ours.
FrostDays frost_days(const std::vector<ZonePlan>& zones, const Ensemble& ensemble);

/// What to tell of them, zone by zone: a stop where it freezes too often
/// (`lost_too_often_fraction`). Nothing of a zone that freezes on the likely day: its plan tells.
std::vector<Caution> frost_cautions(const Job& job, const std::vector<ZonePlan>& zones,
                                    const FrostDays& frost);

}  // namespace slabtide
