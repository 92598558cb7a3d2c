#pragma once

#include "report/markup/page_template.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// For page/cautions.html: what to watch for, with times.
View cautions_view(const PlannedPour& facts);

/// For page/sources.html: weather, mix, assumptions, and where each number comes from.
View sources_view(const PlannedPour& facts);

}  // namespace slabtide
