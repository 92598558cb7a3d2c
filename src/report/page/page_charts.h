#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The day in curves, ready markup: evaporation, surface and body temperature and penetration
/// resistance through the day, a line a zone with the spread of its cells about it, each with an
/// hourly table. Six zones a chart; more stand in groups. Goes with data/page/palette.css and
/// figures.css.
std::string page_charts(const PlannedPour& facts);

}  // namespace slabtide
