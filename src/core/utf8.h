#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

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

/// Columns the character takes in a terminal: 0 for control and combining characters, joiners and
/// isolates, 2 for East Asian wide ones and emoji, else 1.
/// Source: Unicode Standard Annex #11 (class W and F), by blocks and not by each character.
std::size_t terminal_columns(Utf8Char character);

/// Neither a control, format nor private character, nor one that shows nothing; these could move
/// a terminal's cursor, turn the direction of the text around or pass one name off as another.
/// Source: Unicode Standard, the property Default_Ignorable_Code_Point, by blocks.
bool is_printable(Utf8Char character);

/// Characters of a text from outside that are shown before it is cut.
inline constexpr std::size_t longest_shown = 1000;

/// `text` as it may be shown in a line, wherever it came from: a server, a file, a file's name,
/// the command line. What is not printable becomes one visible character, ␛ and its like for
/// controls and � for the rest; tabs become spaces. Joiners and variation selectors stay between
/// the letters and emoji that need them. Right-to-left letters are isolated (U+2068, U+2069), so
/// that they leave the order of the line around them alone. After `max_characters` comes "...".
/// What has been through it comes out of it unchanged.
std::string printable(std::string_view text, std::size_t max_characters = longest_shown);

/// The same for a text of several lines, which is not cut.
std::string printable_lines(std::string_view text);

/// Each character of `text` as `printable` shows it, but nothing isolated and nothing cut.
std::vector<std::string> shown_characters(std::string_view text);

}  // namespace slabtide
