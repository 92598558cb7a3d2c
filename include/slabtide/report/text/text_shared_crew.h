#pragma once

#include <string>

#include "slabtide/day/plan/shared_crew.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// One crew's day on several sites, for a terminal, 80 columns: what is late where, when somebody
/// is on each site, and everybody's way through the day. Ends in a newline.
std::string text_shared_crew(const SharedCrew& shared, const TextStyle& style);

}  // namespace slabtide
