#pragma once

#include "report/markup/page_template.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// For page/order.html: what to order, the trucks, and what to bring.
View order_view(const PlannedPour& facts);

}  // namespace slabtide
