#pragma once

#include "report/markup/page_template.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// For page/headline.html: pour or not and why, the three times that matter most (the first
/// window opens, the last closes, the first cut is due), the tightest window.
View headline_view(const PlannedPour& facts);

}  // namespace slabtide
