#pragma once

#include <cstddef>
#include <vector>

#include "line_chart.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The pull over the strength of some zones as if they were left uncut, from their setting
/// through the night, with the limits of the practice, and below it each zone's time for the
/// saws of these kinds: from when the first may start until all cuts must be in.
///
/// A zone's line is that of the cell by which a tenth of its area has come to the limit, whose
/// crossing is the plan's stress limit.
LineChart risk_chart(const std::vector<std::size_t>& zones, const std::vector<SawKind>& kinds,
                     const PlannedPour& facts);

}  // namespace slabtide
