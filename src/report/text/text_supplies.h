#pragma once

#include <string>

#include "slabtide/day/crew/supplies.h"
#include "slabtide/job/model/job.h"

#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The list of what to bring, one line per item.
std::string supply_lines(const std::vector<Supply>& supplies, UnitSystem units,
                         const TextStyle& style);

}  // namespace slabtide
