#pragma once

#include "report/markup/page_template.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// For page/crew.html: the size of the crew, what is late, and each person's day.
View crew_view(const PlannedPour& facts);

}  // namespace slabtide
