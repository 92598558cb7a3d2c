#include "support/number_checks.h"

#include <algorithm>
#include <cctype>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace slabtide::test {

namespace {

std::string around(std::string_view text, std::size_t at) {
  constexpr std::size_t context = 60;
  const std::size_t from = at < context ? 0 : at - context;
  return std::string(text.substr(from, 2 * context));
}

bool is_word(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

char before(std::string_view text, std::size_t at) { return at == 0 ? ' ' : text[at - 1]; }
char after(std::string_view text, std::size_t at) { return at < text.size() ? text[at] : ' '; }

/// The "M" in "M-0 12": a letter that starts a command in the data of a path.
bool is_path_letter(std::string_view text, std::size_t at) {
  constexpr std::string_view letters = "MLHVCSQTA";
  return letters.find(text[at]) != std::string_view::npos && !is_word(before(text, at));
}

/// True for "-0", "-0.0" and so on as a separate number.
bool is_negative_zero(std::string_view text, std::size_t at) {
  const char left = before(text, at);
  const bool in_path = at > 0 && is_path_letter(text, at - 1);
  if (!in_path && (is_word(left) || left == '-' || left == '.' || left == ')')) return false;
  std::size_t end = at + 1;
  while (end < text.size() && text[end] == '0') ++end;
  if (end == at + 1) return false;
  if (after(text, end) == '.' && after(text, end + 1) == '0') {
    for (++end; end < text.size() && text[end] == '0';) ++end;
  }
  const char right = after(text, end);
  if (right == '.') return std::isdigit(static_cast<unsigned char>(after(text, end + 1))) == 0;
  return !is_word(right) && right != ':';
}

/// True for "-5 min", but not for "10-5 min" or for a hyphen within a word.
bool is_negative_span(std::string_view text, std::size_t at) {
  const char left = before(text, at);
  if (left != ' ' && left != '(' && left != '>' && left != '\n') return false;
  std::size_t end = at + 1;
  while (std::isdigit(static_cast<unsigned char>(after(text, end))) != 0) ++end;
  return end > at + 1 && text.substr(end, 4) == " min" && !is_word(after(text, end + 4));
}

/// `text` without what is between these tags.
std::string without(std::string text, std::string_view tag) {
  const std::string opening = fmt::format("<{}", tag);
  const std::string closing = fmt::format("</{}>", tag);
  for (auto from = text.find(opening); from != std::string::npos; from = text.find(opening, from)) {
    const auto to = text.find(closing, from);
    text.erase(from, to == std::string::npos ? to : to + closing.size() - from);
  }
  return text;
}

}  // namespace

std::vector<std::string> number_faults(std::string_view whole) {
  const std::string text = without(without(std::string(whole), "style"), "script");
  std::vector<std::string> faults;
  for (std::size_t at = text.find("-0"); at != std::string::npos; at = text.find("-0", at + 1)) {
    if (is_negative_zero(text, at)) faults.push_back("-0 in: " + around(text, at));
  }
  for (std::size_t at = text.find('-'); at != std::string::npos; at = text.find('-', at + 1)) {
    if (is_negative_span(text, at)) faults.push_back("under zero: " + around(text, at));
  }
  for (const std::string_view none : {"nan", "inf"}) {
    for (std::size_t at = text.find(none); at != std::string::npos; at = text.find(none, at + 1)) {
      if (is_word(before(text, at)) || is_word(after(text, at + none.size()))) continue;
      faults.push_back(fmt::format("{} in: {}", none, around(text, at)));
    }
  }
  return faults;
}

}  // namespace slabtide::test
