#pragma once

#include "page_template.h"
#include "slabtide/report/plan_facts.h"

namespace slabtide {

/// For page/crew.html: how many, what is late, and each one's day.
View crew_view(const PlanFacts& facts);

}  // namespace slabtide
