#pragma once

#include <string>
#include <string_view>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The windows as a table for a spreadsheet: RFC 4180, UTF-8 without a byte order mark, a row
/// for each zone, part and operation, the saws' among them. A zone without parts has an empty
/// part. Times ISO 8601 with offset to the minute, empty where they do not come, and so
/// the minutes of a window that opens too late; the area in the
/// job's units, as the heading says. Text cells are made safe by `csv_safe`.
std::string csv_plan(const PlannedPour& facts);

/// Whether the text begins as such a table does, in either system of units.
bool is_csv_plan(std::string_view text);

}  // namespace slabtide
