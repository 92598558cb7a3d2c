#pragma once

#include "report/markup/page_template.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// For page/zones.html: every zone with a table of times for each of its parts, its faces, its saws
/// and the following days.
View zones_view(const PlannedPour& facts);

}  // namespace slabtide
