#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The readiness map of a page, as markup: for each operation a plan of the site to scale, with
/// cells coloured by when they are ready, lines of equal time, the direction of work, and the times
/// as a table. With data/page/figures.js it also offers a choice of the operation, and the site at
/// a given hour: where there is shade and what is ready. Without the script all maps are shown one
/// below another. Uses data/page/palette.css and figures.css.
std::string page_map(const PlannedPour& facts);

}  // namespace slabtide
