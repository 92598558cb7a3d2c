#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// A text cell that is safe to open in a spreadsheet: text that begins with = + - @ |, also in
/// their fullwidth forms or after blanks, a tab or a line break could be taken for a formula and
/// gets an apostrophe in front. Text that begins with
/// an apostrophe gets one more, so that removing one always restores the text.
std::string csv_safe(std::string_view text);

/// A record with its CRLF. Cells with a comma, a quotation mark or a line break are quoted, and
/// quotation marks inside are doubled. Source: RFC 4180 (2005), section 2, published.
std::string csv_record(const std::vector<std::string>& cells);

/// Without it a spreadsheet that opens the file by a double click takes UTF-8 for something else.
inline constexpr std::string_view csv_utf8_mark = "\uFEFF";

/// "2026-05-14 10:55", in the zone's time: as a spreadsheet reads a date and time.
std::string csv_local(UtcTime at, const TimeZone& zone);

}  // namespace slabtide
