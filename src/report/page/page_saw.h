#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// How each zone's joints can be made that day, as markup. Empty if nothing is to be cut.
std::string page_saw(const PlannedPour& facts);

/// For the truck sheet on paper: the plan of the site with the cuts of the first saw, and those in
/// a line each. Uses the definitions that page_map puts into the page.
std::string page_plan_on_paper(const PlannedPour& facts);

/// The saw's evening, as markup: for each saw on hand (both kinds if there is none) the cuts on the
/// plan, numbered in working order, and a table with depth and latest time; then each uncut zone's
/// stress against its strength through the night, with the saw windows. Uses the definitions that
/// page_map puts into the page. Empty if nothing is to be cut.
std::string page_cuts(const PlannedPour& facts);

}  // namespace slabtide
