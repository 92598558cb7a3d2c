#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace slabtide {

/// The candidate nearest to `word` by edit distance (a swap of neighbours counts one), if it is
/// near enough to be what was meant; else empty.
std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> candidates);

/// "0" to "9", whatever the locale.
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A finite decimal number that is all of `text`, apart from spaces around it, whatever the locale;
/// else empty.
std::optional<double> parse_number(std::string_view text);

/// Columns a UTF-8 text takes in a terminal; East Asian wide characters take two,
/// codes that set its colour none.
std::size_t display_width(std::string_view utf8);

/// True if the space at `at` stands between an hour and its AM or PM.
bool is_before_half(std::string_view text, std::size_t at);

/// True if the space at `at` stands within a time of day, which stays on one line: before AM or PM,
/// or between a weekday and the hour ("Fri 6:10 AM").
bool is_within_time(std::string_view text, std::size_t at);

inline constexpr std::string_view en_dash = "–";
/// True if an en dash stands at `at` between two times of day: "8:10–9:25 AM", "Thu 11:40 PM–Fri
/// 1:05 AM".
bool is_span_dash(std::string_view text, std::size_t at);

/// `text` wrapped at `width` columns, every line after the first indented by `indent`; a time of
/// day is never broken.
std::string wrap(std::string_view text, std::size_t width, std::size_t indent);

}  // namespace slabtide
