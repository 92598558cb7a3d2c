#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The day in curves, as markup: evaporation, surface and body temperature and penetration
/// resistance through the day, one line per zone with the spread of its cells around it, each chart
/// with an hourly table. A chart has six zones; more zones are shown in groups. Uses
/// data/page/palette.css and figures.css.
std::string page_charts(const PlannedPour& facts);

}  // namespace slabtide
