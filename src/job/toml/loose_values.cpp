#include "loose_values.h"

#include <algorithm>

#include <toml++/toml.h>

#include "core/text.h"

namespace slabtide {

namespace {

constexpr std::string_view left_quote = "“";
constexpr std::string_view right_quote = "”";

bool is_plain_number(std::string_view token) {
  if (token.starts_with('-') || token.starts_with('+')) token.remove_prefix(1);
  const std::size_t digits = std::min(token.find_first_not_of("0123456789"), token.size());
  const std::string_view behind = token.substr(digits);
  const bool leading_zero = digits > 1 && token.front() == '0';
  if (digits == 0 || leading_zero) return false;
  return behind.empty() || (behind.size() > 1 && behind.front() == '.' &&
                            behind.find_first_not_of("0123456789", 1) == std::string_view::npos);
}

/// Whether TOML has this value: the parser itself is asked about what is no common number.
bool is_toml_value(std::string_view token) {
  constexpr std::size_t longest_value = 64;  // of a date and time with its offset, less
  if (is_plain_number(token) || token == "true" || token == "false") return true;
  if (token.size() > longest_value) return false;
  const char first = token.front();
  const bool may_be =
      is_digit(first) || first == '-' || first == '+' || first == 'i' || first == 'n';
  if (!may_be) return false;
  try {
    return toml::parse("x=" + std::string(token)).contains("x");
  } catch (const toml::parse_error&) {
    return false;
  }
}

/// Copies a text value by value. What it cannot follow is copied as it stands: the parser tells
/// what is wrong there.
class LooseScanner {
 public:
  explicit LooseScanner(std::string_view text) : text_(text) {}

  LooseText scan() {
    while (at_ < text_.size()) statement();
    return std::move(result_);
  }

 private:
  bool ended() const { return at_ >= text_.size(); }
  char here() const { return text_[at_]; }
  bool on(std::string_view word) const { return text_.substr(at_).starts_with(word); }

  void add(char c) {
    result_.added.push_back({{line_, column_}});
    result_.text += c;
    ++column_;
  }

  void copy(std::size_t bytes = 1) {
    for (; bytes > 0 && !ended(); --bytes, ++at_) {
      const char c = here();
      const bool continues = (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
      result_.text += c;
      if (c == '\n') {
        ++line_;
        column_ = 1;
      } else if (!continues) {
        ++column_;
      }
    }
  }

  void copy_while(std::string_view signs) {
    while (!ended() && signs.find(here()) != std::string_view::npos) copy();
  }
  void copy_until(std::string_view signs) {
    while (!ended() && signs.find(here()) == std::string_view::npos) copy();
  }
  void copy_line() {
    copy_until("\n");
    copy();
  }

  /// A line, or a key with a value over many lines.
  void statement() {
    copy_while(" \t");
    if (ended()) return;
    if (here() == '[' || here() == '#' || here() == '\n' || !to_value("\n")) return copy_line();
    value("\n");
    copy_line();
  }

  /// Copies a key and its "="; false if there is none before `ends`.
  bool to_value(std::string_view ends) {
    while (!ended() && here() != '=') {
      if (ends.find(here()) != std::string_view::npos || here() == '#') return false;
      if (here() == '"' || here() == '\'') {
        quoted();
      } else {
        copy();
      }
    }
    if (ended()) return false;
    copy();
    copy_while(" \t");
    return !ended();
  }

  void value(std::string_view ends) {
    if (ended() || here() == '\n' || here() == '#' || here() == '\r') return;
    if (here() == '"' || here() == '\'') return quoted();
    if (here() == '[') return list();
    if (here() == '{') return inline_table();
    bare(ends);
  }

  /// A text in quotation marks, which may go over many lines in three of them.
  void quoted() {
    const char mark = here();
    const std::string three(3, mark);
    const bool is_long = on(three);
    const std::string end = is_long ? three : std::string(1, mark);
    copy(end.size());
    while (!ended() && !on(end)) {
      if (!is_long && here() == '\n') return;
      copy(mark == '"' && here() == '\\' ? 2 : 1);
    }
    copy(end.size());
  }

  void blanks_and_comments() {
    for (copy_while(" \t\r\n"); !ended() && here() == '#'; copy_while(" \t\r\n")) copy_line();
  }

  void list() {
    if (depth_ == deepest) return;
    ++depth_;
    copy();
    for (blanks_and_comments(); !ended() && here() != ']'; blanks_and_comments()) {
      const std::size_t before = at_;
      if (here() == ',') {
        copy();
      } else {
        value(",]");
      }
      if (at_ == before) break;
    }
    if (!ended() && here() == ']') copy();
    --depth_;
  }

  void inline_table() {
    if (depth_ == deepest) return;
    ++depth_;
    copy();
    for (copy_while(" \t"); !ended() && here() != '}' && here() != '\n'; copy_while(" \t,")) {
      const std::size_t before = at_;
      if (to_value(",}\n")) value(",}");
      if (at_ == before) break;
    }
    if (!ended() && here() == '}') copy();
    --depth_;
  }

  /// The end of a bare value: before `ends`, its line's end or a comment, without blanks.
  std::size_t bare_end(std::string_view ends) const {
    std::size_t end = at_;
    while (end < text_.size() && text_[end] != '\n' && text_[end] != '\r' && text_[end] != '#' &&
           ends.find(text_[end]) == std::string_view::npos) {
      ++end;
    }
    while (end > at_ && (text_[end - 1] == ' ' || text_[end - 1] == '\t')) --end;
    return end;
  }

  void bare(std::string_view ends) {
    const std::size_t end = bare_end(ends);
    if (end == at_) return;
    std::string_view token = text_.substr(at_, end - at_);
    const bool open = token.starts_with(left_quote) || token.starts_with(right_quote);
    if (open && (token.size() < left_quote.size() + right_quote.size() ||
                 !(token.ends_with(right_quote) || token.ends_with('"')))) {
      return copy(token.size());
    }
    if (!open && is_toml_value(token)) return copy(token.size());
    open ? put_straight(token) : put_quoted(token);
  }

  void put_quoted(std::string_view token) {
    add('"');
    for (const char c : token) {
      if (c == '"' || c == '\\') add('\\');
      copy();
    }
    add('"');
  }

  /// “stamp” as "stamp": a mark for a mark, so that columns stay.
  void put_straight(std::string_view token) {
    const std::size_t last = token.ends_with('"') ? 1 : right_quote.size();
    result_.text += '"';
    ++column_;
    at_ += left_quote.size();
    copy(token.size() - left_quote.size() - last);
    result_.text += '"';
    ++column_;
    at_ += last;
  }

  static constexpr int deepest = 32;  // deeper lists are refused anyway

  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t line_ = 1;
  std::size_t column_ = 1;
  int depth_ = 0;
  LooseText result_;
};

}  // namespace

SourcePosition LooseText::original(SourcePosition position) const {
  const auto first =
      std::lower_bound(added.begin(), added.end(), position.line,
                       [](const Added& each, std::size_t line) { return each.where.line < line; });
  std::size_t before = 0;
  for (auto each = first; each != added.end() && each->where.line == position.line; ++each) {
    if (each->where.column >= position.column) break;
    ++before;
  }
  return {position.line, position.column - before};
}

LooseText quote_loose_values(std::string_view text) { return LooseScanner(text).scan(); }

}  // namespace slabtide
