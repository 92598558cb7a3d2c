#pragma once

#include <string>

#include "slabtide/day/crew/supplies.h"
#include "slabtide/day/pour/order.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// "22 lb", "4.5 gal", "7 yd³"; rounded up, so that it is enough.
std::string supply_amount_words(const Supply& supply, UnitSystem units);

/// Whether the concrete that a low base takes is worth a word: it is shown to a tenth.
bool tells_low_base(const OrderPlan& order);

}  // namespace slabtide
