#pragma once

#include <string>

#include "plan_view.h"
#include "report/markup/svg.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The plan of the site with the cuts for one kind of saw, numbered in the order they are made.
/// Cuts that the saw cannot make within the time computed are dashed.
Element cut_map(const SawShift& shift, const PlanView& view, const PlannedPour& facts,
                const std::string& title);

}  // namespace slabtide
