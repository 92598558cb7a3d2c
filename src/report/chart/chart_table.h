#pragma once

#include <string>

#include "line_chart.h"
#include "report/markup/svg.h"

namespace slabtide {

/// The lines of a chart as a table in a `details` element, one row per full hour.
Element chart_table(const LineChart& chart, std::string_view unit, int decimals,
                    const PlannedPour& facts);

}  // namespace slabtide
