#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace slabtide {

/// Stands for what is left out of a text, and takes one column.
inline constexpr std::string_view ellipsis = "…";

/// The byte order mark (U+FEFF) that some editors put at the start of a UTF-8 file.
inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// One character of a UTF-8 text: a Unicode code point, or a single byte that is not UTF-8.
struct Utf8Char {
  char32_t code = 0;
  std::size_t bytes = 1;
  bool valid = false;
};

/// The first character of `text`. Overlong forms, surrogates and truncated sequences are not valid.
/// Source: RFC 3629, section 3. Error: std::invalid_argument if `text` is empty.
Utf8Char first_utf8(std::string_view text);

/// Columns the character takes in a terminal: 0 for control and combining characters, joiners and
/// isolates, 2 for East Asian wide characters and emoji, else 1. Source: Unicode Standard Annex #11
/// (class W and F), by blocks rather than by character.
std::size_t terminal_columns(Utf8Char character);

/// False for control, format, private-use and invisible characters: these could move a terminal's
/// cursor, reverse the direction of text, or pass one name off as another. Source: Unicode
/// Standard, the property Default_Ignorable_Code_Point, by blocks.
bool is_printable(Utf8Char character);

/// Longest text from outside that is shown uncut, in characters.
inline constexpr std::size_t longest_shown = 1000;

/// `text` made safe to show on one line, wherever it came from: a server, a file, a file name, the
/// command line. An unprintable character becomes one visible one: ␛ and similar for controls, �
/// for the rest; tabs become spaces. Joiners and variation selectors stay between the letters and
/// emoji that need them. Right-to-left letters are isolated (U+2068, U+2069), so that they do not
/// reorder the line around them. After `max_characters` comes "...". Applying it twice changes
/// nothing more.
std::string printable(std::string_view text, std::size_t max_characters = longest_shown);

/// The same for a text of several lines, without a limit on length.
std::string printable_lines(std::string_view text);

/// Each character of `text` as `printable` shows it, without isolates or cuts.
std::vector<std::string> shown_characters(std::string_view text);

}  // namespace slabtide
