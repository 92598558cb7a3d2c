#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The saw's evening, ready markup: for each saw on hand (both kinds where none is) the cuts on
/// the plan, numbered in working order, and as a table with depth and latest time; then the
/// pull against the strength of each zone uncut, through the night, with the saw's windows.
/// Draws on the definitions that page_map puts into the page. Empty where nothing is to be cut.
std::string page_saw(const PlannedPour& facts);

}  // namespace slabtide
