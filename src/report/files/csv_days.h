#pragma once

#include <string>
#include <string_view>

#include "slabtide/day/days/planned_days.h"

namespace slabtide {

/// The days as a table for a spreadsheet, one row each: as `csv_plan`, RFC 4180. Local columns are
/// as a spreadsheet reads dates and times; `start` and `call_off_by` are the instants, with offset.
/// Empty where there is no figure.
std::string csv_days(const PlannedDays& facts);

/// Whether the text begins like such a table.
bool is_csv_days(std::string_view text);

}  // namespace slabtide
