#pragma once

#include <span>
#include <string>

#include "slabtide/day/plan/shared_crew.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// One crew's day on several sites, for a terminal, 80 columns: what is late where, when somebody
/// is on each site, and everybody's way through the day; `pours` as share_crew had them. Ends in a
/// newline.
std::string text_shared_crew(const SharedCrew& shared, std::span<const PlannedPour> pours,
                             const TextStyle& style);

/// The day of one of that crew, short enough to be sent as a message: on which site when, and the
/// work there. Empty if nobody has that name.
std::string text_shared_hand(const SharedCrew& shared, std::span<const PlannedPour> pours,
                             const std::string& name, const TextStyle& style);

}  // namespace slabtide
