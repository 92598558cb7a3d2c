#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace slabtide {

/// What some editors put before the first character of a UTF-8 file (U+FEFF).
inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// One character of a UTF-8 text: a Unicode code point, or a single byte that is not UTF-8.
struct Utf8Char {
  char32_t code = 0;
  std::size_t bytes = 1;
  bool valid = false;
};

/// The first character of `text`. Overlong forms, surrogates and truncated sequences are
/// not valid. Source: RFC 3629, section 3. Error: std::invalid_argument where `text` is empty.
Utf8Char first_utf8(std::string_view text);

/// Columns the character takes in a terminal: 0 for control and combining characters, 2 for
/// East Asian wide ones and emoji, else 1.
/// Source: Unicode Standard Annex #11 (class W and F), by blocks and not by each character.
std::size_t terminal_columns(Utf8Char character);

/// Neither a control, format nor private character; these could move a terminal's cursor
/// or turn the direction of the text around.
bool is_printable(Utf8Char character);

/// `text` with tabs as single spaces and everything else that is not printable as '?'.
std::string printable(std::string_view text);

}  // namespace slabtide
