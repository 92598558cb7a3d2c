#pragma once

#include <string>
#include <vector>

#include "slabtide/day/windows/part_plan.h"

namespace slabtide {

/// The notes on the windows of a part while it is plastic, each note once with the operations it
/// applies to: "first edge, stamp: bleed water still stands ...".
std::vector<std::string> window_notes(const PartPlan& part);

}  // namespace slabtide
