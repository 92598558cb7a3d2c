#pragma once

#include <cstddef>
#include <vector>

#include "line_chart.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The stress over the strength of some zones if left uncut, from setting through the night, with
/// the limits of the practice. Below it, each zone's window for these kinds of saw: from when the
/// first may start until all cuts must be in.
///
/// A zone's line is that of the cell whose stress reaches the limit when a tenth of the zone's area
/// has reached it; that crossing is the plan's stress limit.
LineChart risk_chart(const std::vector<std::size_t>& zones, const std::vector<SawKind>& kinds,
                     const PlannedPour& facts);

}  // namespace slabtide
