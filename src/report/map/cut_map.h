#pragma once

#include <string>

#include "map_ground.h"
#include "plan_view.h"
#include "report/markup/svg.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The plan of the site with the cuts for one kind of saw, numbered in the order they are made.
/// Cuts that the saw cannot make within the time computed are dashed. The numbers leave the names
/// of zones free where there is room.
Element cut_map(const SawShift& shift, const PlanView& view, const MapGround& ground,
                const PlannedPour& facts, const std::string& title);

}  // namespace slabtide
