#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/diagnostic.h"

namespace slabtide {

struct CsvField {
  std::string text;  ///< without quotation marks and surrounding spaces
  SourcePosition where;
};

/// The fields of a line; at least one.
using CsvRow = std::vector<CsvField>;

struct CsvComment {
  std::string_view text;  ///< after the # and the spaces that follow it
  SourcePosition where;
};

struct CsvTable {
  std::vector<CsvComment> comments;
  std::vector<CsvRow> rows;
};

/// Cuts comma-separated text into fields (RFC 4180 with comments). Line breaks are LF or CRLF. A
/// byte order mark, blank lines and lines that start with # are not rows. Departure from RFC 4180:
/// a quoted field ends on its line, so that a missing quotation mark spoils only one line. Errors:
/// an unclosed quotation mark, or text after a closed one; more than 64 fields or 10,000 rows. The
/// comments are views into `text`.
Parsed<CsvTable> read_csv_table(std::string_view text);

}  // namespace slabtide
