#pragma once

#include <string>

#include "slabtide/day/crew/supplies.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// "22 lb", "4.5 gal", "7 yd³"; rounded up, so that it is enough.
std::string supply_amount_words(const Supply& supply, UnitSystem units);

}  // namespace slabtide
