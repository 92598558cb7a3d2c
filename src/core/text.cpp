#include "text.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <numeric>
#include <vector>

#include "utf8.h"

namespace slabtide {
namespace {

/// One slip per this many letters, and no more than three in all, still counts as the word.
constexpr std::size_t letters_per_slip = 3;
constexpr std::size_t max_slips = 3;

char fold(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string folded(std::string_view word) {
  std::string result(word);
  std::transform(result.begin(), result.end(), result.begin(), fold);
  return result;
}

/// Optimal string alignment: an insertion, deletion, substitution or swap of neighbours costs one
/// each; no part is edited twice.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before_last(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(last.begin(), last.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before_last[j - 2] + 1);
      }
    }
    std::swap(before_last, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

/// The number that is all of `text`, decimal, whatever the locale; empty where it is none.
std::optional<double> decimal(std::string_view text) {
  double value = 0.0;
#ifdef __cpp_lib_to_chars
  const char* const end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, value);
  if (problem != std::errc{} || stop != end) return std::nullopt;
#else
  // A library without from_chars for it: that of the planner, whose strtod knows no locale.
  if (text.find_first_not_of("0123456789.eE+-") != std::string_view::npos) return std::nullopt;
  const std::string copy(text);
  char* stop = nullptr;
  errno = 0;
  value = std::strtod(copy.c_str(), &stop);
  if (errno != 0 || stop != copy.c_str() + copy.size()) return std::nullopt;
#endif
  return value;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) {
    return {};
  }
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Appends `line` wrapped; `column` is where the text written so far ends.
void wrap_line(std::string_view line, std::size_t width, std::size_t indent, std::size_t margin,
               std::string& out) {
  const std::size_t lead = std::min(line.find_first_not_of(' '), line.size());
  if (lead == line.size()) {
    return;
  }
  out.append(margin + lead, ' ');
  std::size_t column = margin + lead;
  bool first_word = true;
  for (std::size_t at = lead; at < line.size(); at = line.find_first_not_of(' ', at)) {
    std::size_t end = std::min(line.find(' ', at), line.size());
    while (is_within_time(line, end)) end = std::min(line.find(' ', end + 1), line.size());
    const std::string_view word = line.substr(at, end - at);
    const std::size_t columns = display_width(word);
    if (!first_word && column + 1 + columns > width) {
      out.append(1, '\n').append(indent, ' ');
      column = indent;
    } else if (!first_word) {
      out += ' ';
      ++column;
    }
    out += word;
    column += columns;
    first_word = false;
    at = end;
  }
}

constexpr std::size_t weekday_letters = 3;

/// "9:25", "09:25 on": an hour of one or two digits, a colon, two digits.
bool starts_with_clock(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon != 1 && colon != 2) return false;
  const std::string_view minutes = text.substr(colon + 1);
  return is_digit(text[0]) && is_digit(text[colon - 1]) && minutes.size() >= 2 &&
         is_digit(minutes[0]) && is_digit(minutes[1]);
}

/// "Fri 1:05 AM", "1:05 AM".
bool starts_with_time(std::string_view text) {
  constexpr std::array<std::string_view, 7> weekdays{"Mon ", "Tue ", "Wed ", "Thu ",
                                                     "Fri ", "Sat ", "Sun "};
  for (const std::string_view weekday : weekdays) {
    if (text.starts_with(weekday)) return starts_with_clock(text.substr(weekday.size()));
  }
  return starts_with_clock(text);
}

}  // namespace

std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> candidates) {
  std::optional<std::string_view> best;
  std::size_t best_distance = max_slips + 1;
  const std::string wanted = folded(word);
  for (const std::string_view candidate : candidates) {
    const std::size_t shorter = std::min(word.size(), candidate.size());
    const std::size_t longer = std::max(word.size(), candidate.size());
    const std::size_t slips = std::min(longer / letters_per_slip, max_slips);
    if (longer - shorter > slips) continue;  // the lengths alone need that many slips
    const std::size_t distance = edit_distance(wanted, folded(candidate));
    if (!word.empty() && distance <= slips && distance < best_distance) {
      best = candidate;
      best_distance = distance;
    }
  }
  return best;
}

std::optional<double> parse_number(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+') && !text.starts_with("+-")) {
    text.remove_prefix(1);  // from_chars accepts no plus sign
  }
  const std::string_view digits = text.substr(text.starts_with('-') ? 1 : 0);
  if (digits.empty() || !(is_digit(digits.front()) || digits.front() == '.')) {
    return std::nullopt;  // from_chars would accept "inf" and "nan"
  }
  const std::optional<double> value = decimal(text);
  return value && std::isfinite(*value) ? value : std::nullopt;
}

namespace {

/// Bytes of the code that sets a terminal's colour, "ESC [ 1 ; 33 m" (ECMA-48, 8.3.117, from
/// memory), if the text begins with one; else 0.
std::size_t colour_code_bytes(std::string_view text) {
  if (!text.starts_with("\x1b[")) return 0;
  const std::size_t end = text.find_first_not_of("0123456789;", 2);
  return end != std::string_view::npos && text[end] == 'm' ? end + 1 : 0;
}

}  // namespace

std::size_t display_width(std::string_view utf8) {
  std::size_t columns = 0;
  while (!utf8.empty()) {
    if (const std::size_t code = colour_code_bytes(utf8); code > 0) {
      utf8.remove_prefix(code);
      continue;
    }
    const Utf8Char c = first_utf8(utf8);
    columns += terminal_columns(c);
    utf8.remove_prefix(c.bytes);
  }
  return columns;
}

bool is_before_half(std::string_view text, std::size_t at) {
  constexpr std::size_t half_letters = 2;
  if (at == 0 || at >= text.size() || text[at] != ' ' || !is_digit(text[at - 1])) return false;
  const std::string_view half = text.substr(at + 1, half_letters);
  if (half != "AM" && half != "PM") return false;
  const std::size_t after = at + 1 + half_letters;
  const char next = after < text.size() ? fold(text[after]) : ' ';
  return !(next >= 'a' && next <= 'z') && !is_digit(next);
}

bool is_within_time(std::string_view text, std::size_t at) {
  if (is_before_half(text, at)) return true;
  if (at < weekday_letters || at >= text.size() || text[at] != ' ') return false;
  return starts_with_time(text.substr(at - weekday_letters)) &&
         starts_with_clock(text.substr(at + 1));
}

bool is_span_dash(std::string_view text, std::size_t at) {
  if (at < 2 || at >= text.size() || !text.substr(at).starts_with(en_dash)) return false;
  const std::string_view before = text.substr(0, at);
  const bool ends_a_time =
      is_digit(before.back()) || before.ends_with("AM") || before.ends_with("PM");
  return ends_a_time && starts_with_time(text.substr(at + en_dash.size()));
}

std::string wrap(std::string_view text, std::size_t width, std::size_t indent) {
  std::string out;
  std::size_t margin = 0;
  for (;;) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    wrap_line(text.substr(0, end), width, indent, margin, out);
    if (end == text.size()) {
      return out;
    }
    out += '\n';
    margin = indent;
    text.remove_prefix(end + 1);
  }
}

}  // namespace slabtide
