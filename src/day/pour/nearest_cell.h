#pragma once

#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// The cell whose middle lies nearest to a place; of equals the one placed first, however the
/// rounding goes.
const CellRun& nearest_cell(const ZoneRun& zone, Point place);

}  // namespace slabtide
