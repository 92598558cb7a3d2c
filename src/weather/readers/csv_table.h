#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/diagnostic.h"

namespace slabtide {

struct CsvField {
  std::string text;  ///< without quotes and without spaces around
  SourcePosition where;
};

/// A line's fields; at least one.
using CsvRow = std::vector<CsvField>;

struct CsvComment {
  std::string_view text;  ///< after the # and the spaces that follow it
  SourcePosition where;
};

struct CsvTable {
  std::vector<CsvComment> comments;
  std::vector<CsvRow> rows;
};

/// Cuts comma-separated text into fields (RFC 4180 with comments). Line ends are LF or CRLF;
/// a byte-order mark, blank lines and lines that start with # are no rows. Departure from
/// RFC 4180: a quoted field ends on its line, so that one lost quote spoils one line only.
/// Errors: a quote that does not close or text after one; more than 64 fields or 10,000 rows.
/// The comments point into `text`.
Parsed<CsvTable> read_csv_table(std::string_view text);

}  // namespace slabtide
