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

/// The cell of a zone with the middle of the set times, by area, and so its history; the first
/// cell where none sets before the forecast ends.
std::size_t middle_cell(const ZoneRun& zone, const PlannedPour& facts);

/// Ten minutes apart, both ends included where they fall on it. Seconds as given.
std::vector<double> sample_times_s(double from_s, double to_s);

/// Reads a value of a history at an instant.
using Reader = std::function<double(const ColumnHistory&, double at_s)>;

/// Straight between the entries of one of a history's records.
Reader reader_of(std::vector<double> ColumnHistory::*record, double (*convert)(double));

/// The middle cell's value through a time span from when all of the zone is placed, with the
/// least and the largest of the zone's cells about it.
ChartLine zone_line(std::size_t zone, const Reader& reader, double from_s, double to_s,
                    const PlannedPour& facts);

}  // namespace slabtide
