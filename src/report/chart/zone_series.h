#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "line_chart.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The cell of a zone with the median set time by area, whose history represents the zone; the
/// first cell if none sets before the forecast ends.
std::size_t middle_cell(const ZoneRun& zone, const PlannedPour& facts);

/// Instants ten minutes apart, from `from_s` up to `to_s`.
std::vector<double> sample_times_s(double from_s, double to_s);

/// Reads one value of a history at an instant.
using Reader = std::function<double(const ColumnHistory&, double at_s)>;

/// Interpolates one record of a history linearly.
Reader reader_of(std::vector<double> ColumnHistory::*record, double (*convert)(double));

/// The value for the middle cell over a time span, starting when all of the zone is placed, with
/// the minimum and maximum over the zone's cells around it.
ChartLine zone_line(std::size_t zone, const Reader& reader, double from_s, double to_s,
                    const PlannedPour& facts);

}  // namespace slabtide
