#pragma once

#include <string>

#include "map_ground.h"
#include "plan_view.h"
#include "report/markup/svg.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The plan of the site with the cuts for one kind of saw, numbered in the order they are made.
/// Cuts that the saw cannot make within the time computed are dashed. No number covers a name or
/// another: one without room on its cut stands beside it, with a line to it, and is left out where
/// the plan is full.
Element cut_map(const SawShift& shift, const PlanView& view, const MapGround& ground,
                const PlannedPour& facts, const std::string& title);

/// The same with ground and names of a type size of their own in it, in place of the page's, and
/// the first `numbered` cuts alone numbered.
Element small_cut_map(const SawShift& shift, std::size_t numbered, const PlanView& view,
                      const MapGround& ground, const PlannedPour& facts, const std::string& title);

}  // namespace slabtide
