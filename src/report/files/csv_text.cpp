#include "csv_text.h"

#include <array>
#include <cstddef>

#include <boost/date_time/gregorian/formatters.hpp>

namespace slabtide {

namespace {

std::string quoted_cell(std::string_view cell) {
  if (cell.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(cell);
  std::string result = "\"";
  for (const char c : cell) {
    if (c == '"') result += '"';
    result += c;
  }
  return result + '"';
}

template <std::size_t count>
std::string_view found_at_start(std::string_view text,
                                const std::array<std::string_view, count>& marks) {
  for (const std::string_view mark : marks) {
    if (text.starts_with(mark)) return mark;
  }
  return {};
}

/// Blanks that a spreadsheet may leave out before it looks at a cell: space, no-break space, the
/// ideographic one, and the byte-order mark.
std::string_view without_blanks_before(std::string_view text) {
  constexpr std::array<std::string_view, 4> blanks{" ", "\u00a0", "\u3000", "\ufeff"};
  for (auto blank = found_at_start(text, blanks); !blank.empty();
       blank = found_at_start(text, blanks)) {
    text.remove_prefix(blank.size());
  }
  return text;
}

/// What may begin a formula, a command or a new cell, in its fullwidth forms too.
bool begins_formula(std::string_view text) {
  constexpr std::array<std::string_view, 13> marks{
      "=", "+", "-", "@", "|", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20", "\uff5c"};
  return !found_at_start(text, marks).empty();
}

}  // namespace

std::string csv_safe(std::string_view text) {
  return begins_formula(without_blanks_before(text)) || text.starts_with('\'')
             ? std::string("'").append(text)
             : std::string(text);
}

std::string csv_record(const std::vector<std::string>& cells) {
  std::string record;
  for (const std::string& cell : cells) {
    if (&cell != &cells.front()) record += ',';
    record += quoted_cell(cell);
  }
  return record + "\r\n";
}

std::string csv_local(UtcTime at, const TimeZone& zone) {
  const Date day = zone.local_from_utc(to_minute(at)).date();
  return boost::gregorian::to_iso_extended_string(day) + " " + clock_time(at, zone);
}

}  // namespace slabtide
