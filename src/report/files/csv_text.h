#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace slabtide {

/// A cell that holds text, safe to open in a spreadsheet: one that begins with = + - @, a tab
/// or a line break could be taken for a formula and gets an apostrophe in front. One that begins
/// with an apostrophe gets one more, so that taking one away gives the text back always.
std::string csv_safe(std::string_view text);

/// A record with its CRLF; cells with a comma, a quotation mark or a line break in quotation
/// marks, those inside doubled. Source: RFC 4180 (2005), section 2, published.
std::string csv_record(const std::vector<std::string>& cells);

}  // namespace slabtide
