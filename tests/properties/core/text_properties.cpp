#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <rapidcheck.h>

#include "core/text.h"
#include "core/utf8.h"
#include "slabtide/core/diagnostic.h"

namespace {

using namespace slabtide;

/// Bytes of every kind: plain text, complete characters, broken ones, controls.
std::string any_bytes() {
  const std::vector<std::string> parts{
      "a",       "b",      " ",        "0",      "é",          "土",     "🙂",
      "e\u0301", "\xff",   "\xE2\x82", "\t",     "\x1b",       "\r",     std::string(1, '\0'),
      "\u202E",  "ח",      "م",        ":",      "\u200F",     "\u200D", "\uFE0F",
      "\u2068",  "\u2069", "\u061C",   "\uFDD0", "\U000E0041", "क"};
  std::string text;
  for (const std::string& part :
       *rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(parts))) {
    text += part;
  }
  return text;
}

std::vector<std::string> split(const std::string& text, const std::string& separators) {
  std::vector<std::string> result;
  std::string::size_type at = text.find_first_not_of(separators);
  while (at != std::string::npos) {
    const std::string::size_type end = std::min(text.find_first_of(separators, at), text.size());
    result.push_back(text.substr(at, end - at));
    at = text.find_first_not_of(separators, end);
  }
  return result;
}

std::vector<std::string> lines_of(const std::string& text) { return split(text, "\n"); }

}  // namespace

TEST_CASE("a number written in full is read back as the same number") {
  CHECK(rc::check([](double value) {
    RC_PRE(std::isfinite(value));
    RC_ASSERT(parse_number(fmt::format(" {} ", value)) == value);
    RC_ASSERT(parse_number(fmt::format("{:.17e}", value)) == value);
  }));
}

TEST_CASE("wrapping keeps the words and the width") {
  CHECK(rc::check([] {
    const std::string text = any_bytes();
    const auto width = *rc::gen::inRange<std::size_t>(0, 30);
    const auto indent = *rc::gen::inRange<std::size_t>(0, 5);
    const std::string wrapped = wrap(text, width, indent);
    RC_ASSERT(split(wrapped, " \n") == split(text, " \n"));
    for (const std::string& line : lines_of(wrapped)) {
      RC_ASSERT(display_width(line) <= width || split(line, " ").size() == 1);
      RC_ASSERT(!line.ends_with(' '));
    }
  }));
}

TEST_CASE("no finding, whatever is in it, disturbs the terminal or passes its width") {
  CHECK(rc::check([] {
    const std::string line = any_bytes() + any_bytes();
    Diagnostic d{.key = any_bytes(),
                 .message = any_bytes(),
                 .where = SourcePosition{1, *rc::gen::inRange<std::size_t>(0, 200)},
                 .also_where = {},
                 .next_step = any_bytes()};
    const std::vector<std::string> lines = lines_of(render(d, "file", line));
    for (const std::string& shown : lines) {
      RC_ASSERT(printable(shown) == shown);
    }
    const bool quoted = lines.size() >= 3 && lines[2].ends_with('^');
    if (quoted) {
      RC_ASSERT(display_width(lines[1]) <= 80);
      RC_ASSERT(display_width(lines[2]) <= 80);
    }
  }));
}

TEST_CASE("what has been made printable stays so, cut or whole") {
  CHECK(rc::check([] {
    const std::string text = any_bytes() + any_bytes();
    const auto max = *rc::gen::inRange<std::size_t>(3, 40);
    const std::string shown = printable(text, max);
    RC_ASSERT(printable(shown, max) == shown);
    RC_ASSERT(printable_lines(shown) == shown);
    for (const char c : shown) RC_ASSERT(static_cast<unsigned char>(c) >= 0x20U && c != 0x7F);
  }));
}

TEST_CASE("a word with one slip is found among others that are far") {
  CHECK(rc::check([] {
    const std::vector<std::string_view> keys{"thickness_in", "placing_start", "stamp", "texture"};
    const std::string_view key = *rc::gen::elementOf(keys);
    std::string word(key);
    const auto at = *rc::gen::inRange<std::size_t>(0, word.size() - 1);
    switch (*rc::gen::inRange(0, 4)) {
      case 0:
        word.erase(at, 1);
        break;
      case 1:
        word.insert(at, 1, 'q');
        break;
      case 2:
        word[at] = 'q';
        break;
      default:
        std::swap(word[at], word[at + 1]);
    }
    RC_ASSERT(nearest(word, keys) == key);
  }));
}
