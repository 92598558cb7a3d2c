#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The readiness map of a page, ready markup: a plan of the site to scale for each operation,
/// its cells coloured by when they are ready, lines of equal time, the way to work, and the
/// times as a table. With data/page/figures.js also a choice of the operation and the site at an
/// hour: where shade lies and what is ready. Without the script all the maps stand one under
/// another. Goes with data/page/palette.css and figures.css.
std::string page_map(const PlannedPour& facts);

}  // namespace slabtide
