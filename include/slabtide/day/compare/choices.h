#pragma once

#include "slabtide/day/compare/choice.h"
#include "slabtide/day/compare/choice_figures.h"
#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// What can still be changed about a pour, one thing at a time; `figures` are its own. A change
/// against something that the day does not threaten is not tried. One that gives the same concrete,
/// hours and crew as an earlier one is left out, and so is one that makes no sense for this job.
Choices find_choices(const PlannedPour& ordered, const ChoiceFigures& figures);

}  // namespace slabtide
