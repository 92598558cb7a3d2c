#include "journal_words.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace slabtide {

namespace {

constexpr std::string_view blanks = " \t";
constexpr std::string_view needs_quotes = " \t\"\\#\r\n";

/// A letter after a backslash and the character it means.
struct Escape {
  char letter;
  char meaning;
};
constexpr std::array<Escape, 5> escapes{
    {{'"', '"'}, {'\\', '\\'}, {'n', '\n'}, {'t', '\t'}, {'r', '\r'}}};

class Cutter {
 public:
  Cutter(std::string_view line, std::size_t number) : line_(line), number_(number) {}

  JournalLine cut() {
    for (skip_blanks(); !done() && peek() != '#' && !result_.fault; skip_blanks()) {
      result_.words.push_back({{}, here()});
      if (peek() == '"') {
        take_quoted();
      } else {
        take_bare();
      }
    }
    return std::move(result_);
  }

 private:
  bool done() const { return at_ >= line_.size(); }
  char peek() const { return line_[at_]; }
  std::string& word() { return result_.words.back().text; }

  /// Columns count characters, so UTF-8 continuation bytes are skipped.
  SourcePosition here() const {
    const auto before = line_.substr(0, at_);
    const auto characters = std::count_if(before.begin(), before.end(), [](char byte) {
      return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
    });
    return {number_, static_cast<std::size_t>(characters) + 1};
  }

  void skip_blanks() { at_ = std::min(line_.find_first_not_of(blanks, at_), line_.size()); }

  void fail(std::string message, std::string next_step) {
    result_.fault =
        Diagnostic{Severity::error, {}, std::move(message), here(), {}, std::move(next_step)};
  }

  void take_bare() {
    const std::size_t end = std::min(line_.find_first_of(" \t\"", at_), line_.size());
    word() = line_.substr(at_, end - at_);
    at_ = end;
    if (!done() && peek() == '"') {
      fail("a quotation mark in the middle of a word", "put the whole name in quotation marks");
    }
  }

  void take_quoted() {
    const SourcePosition opened = here();
    for (++at_; !done() && peek() != '"'; ++at_) {
      const std::optional<char> meaning = peek() == '\\' ? take_escape() : peek();
      if (!meaning) return;
      word() += *meaning;
    }
    if (done()) {
      fail("the quotation marks are not closed", "close them at the end of the name");
      result_.fault->where = opened;
      return;
    }
    ++at_;
  }

  /// The character that the letter after the current backslash means.
  std::optional<char> take_escape() {
    const char letter = at_ + 1 < line_.size() ? line_[at_ + 1] : '\0';
    const auto* const found = std::find_if(escapes.begin(), escapes.end(), [letter](Escape escape) {
      return escape.letter == letter;
    });
    if (found == escapes.end()) {
      fail("a backslash that means nothing", R"(a backslash itself is written \\)");
      return std::nullopt;
    }
    ++at_;
    return found->meaning;
  }

  std::string_view line_;
  std::size_t number_;
  std::size_t at_ = 0;
  JournalLine result_;
};

/// "along-2-of-3", "wall3-1-of-2", "face-1": what a place of a zone is known by.
bool is_part_id(std::string_view text) {
  const auto skip = [&text](std::string_view signs) {
    const std::size_t count = std::min(text.find_first_not_of(signs), text.size());
    text.remove_prefix(count);
    return count > 0;
  };
  constexpr std::string_view digits = "0123456789";
  if (!skip("abcdefghijklmnopqrstuvwxyz")) return false;
  skip(digits);
  if (!skip("-") || !skip(digits)) return false;
  constexpr std::string_view of = "-of-";
  if (text.starts_with(of)) text.remove_prefix(of.size());
  skip(digits);
  return text.empty();
}

}  // namespace

JournalLine cut_journal_line(std::string_view line, std::size_t number) {
  return Cutter(line, number).cut();
}

std::string journal_word(std::string_view text) {
  if (!text.empty() && text.find_first_of(needs_quotes) == std::string_view::npos) {
    return std::string(text);
  }
  std::string word = "\"";
  for (const char c : text) {
    const auto* const found = std::find_if(escapes.begin(), escapes.end(),
                                           [c](Escape escape) { return escape.meaning == c; });
    if (found != escapes.end()) word += {'\\', found->letter};
    if (found == escapes.end()) word += c;
  }
  return word + '"';
}

std::string noted_part_text(const NotedPart& part) {
  if (part.id.empty() || part.id == part.name) return part.name;
  return fmt::format("{} ({})", part.name, part.id);
}

NotedPart parse_noted_part(const std::string& text) {
  const std::size_t open = text.rfind(" (");
  if (open == std::string::npos || open == 0 || !text.ends_with(')')) return {text, {}};
  std::string id = text.substr(open + 2, text.size() - open - 3);
  return is_part_id(id) ? NotedPart{text.substr(0, open), std::move(id)} : NotedPart{text, {}};
}

}  // namespace slabtide
