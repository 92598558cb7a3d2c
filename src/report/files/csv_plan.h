#pragma once

#include <string>
#include <string_view>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The windows as a table for a spreadsheet: RFC 4180, UTF-8 after a byte order mark, one row for
/// each zone, part and operation, including the saws. The part is empty for a zone without parts.
/// Times are ISO 8601 with offset, to the minute, and empty if they do not happen; so are the
/// minutes of a window that opens too late. The area is in the job's units, as the heading says.
/// Text cells are made safe by `csv_safe`.
std::string csv_plan(const PlannedPour& facts);

/// Whether the text begins like such a table, in either system of units.
bool is_csv_plan(std::string_view text);

}  // namespace slabtide
