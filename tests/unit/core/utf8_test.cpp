#include "core/utf8.h"

#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {

void check_valid(std::string_view text, char32_t code, std::size_t bytes) {
  const Utf8Char c = first_utf8(text);
  CHECK(c.valid);
  CHECK(c.code == code);
  CHECK(c.bytes == bytes);
}

}  // namespace

TEST_CASE("characters at the edges of each length") {
  // RFC 3629, section 3.
  check_valid("a", U'a', 1);
  check_valid("\x7f", 0x7F, 1);
  check_valid("\xC2\x80", 0x80, 2);
  check_valid("\xDF\xBF", 0x7FF, 2);
  check_valid("\xE0\xA0\x80", 0x800, 3);
  check_valid("\xEF\xBF\xBF", 0xFFFF, 3);
  check_valid("\xF0\x90\x80\x80", 0x10000, 4);
  check_valid("\xF4\x8F\xBF\xBF", 0x10FFFF, 4);
  check_valid(std::string_view("\0", 1), 0, 1);
}

TEST_CASE("bytes that are not UTF-8 are taken one by one") {
  for (const char* wrong :
       {"\x80", "\xBF", "\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xED\xBF\xBF",
        "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF8\x88\x80\x80\x80", "\xFF", "\xC3", "\xE2\x82",
        "\xF0\x9F\x98", "\xC3(", "\xE2(\xA1"}) {
    const Utf8Char c = first_utf8(wrong);
    CHECK_FALSE(c.valid);
    CHECK(c.bytes == 1);
  }
  CHECK_THROWS_AS(first_utf8(""), std::invalid_argument);
}

// NOLINTBEGIN(misc-misleading-bidirectional): marks that turn the direction of text

TEST_CASE("what could disturb a terminal is made visible") {
  CHECK(printable("slab 4 in – 混凝土") == "slab 4 in – 混凝土");
  CHECK(printable("a\tb") == "a b");
  CHECK(printable("\x1b[31mred\x1b[0m") == "␛[31mred␛[0m");
  CHECK(printable("\x1b]0;title\x07") == "␛]0;title␇");
  CHECK(printable("two\r\nlines") == "two␍␊lines");
  CHECK(printable("\xC2\x9B"
                  "31m") == "�31m");  // C1 control sequence introducer
  CHECK(printable("a\u202Eb\u2066c\u200Ed") == "a�b�c�d");
  CHECK(printable("a\u200Bb\uFEFFc\u2028d\u2029") == "a�b�c�d�");  // invisible, or line ends
  CHECK(printable("a\u00ADb\u3164c\u2800d\u034F") == "a�b�c�d�");  // more invisible characters
  CHECK(printable("x\U000E0061\U000E007F") == "x��");              // tags
  CHECK(printable("\xff\xfe") == "��");
  CHECK(printable(std::string_view("a\0b\x7f", 4)) == "a␀b␡");
}

TEST_CASE("joiners and selectors stay where letters and emoji need them, and nowhere else") {
  for (const char* whole : {"می\u200Cخواهم", "क्\u200Dष", "👷\u200D♀\uFE0F", "🏳\uFE0F\u200D🌈",
                            "❤\uFE0F", "1\uFE0F\u20E3", "Slab\u00AE\uFE0F"}) {
    std::string shown = printable(whole);
    for (const std::string_view isolate : {"\u2068", "\u2069"}) {
      const std::size_t at = shown.find(isolate);
      if (at != std::string::npos) shown.erase(at, isolate.size());
    }
    CHECK(shown == whole);
  }
  CHECK(printable("Mi\u200Dx\u200C") == "Mi�x�");
  CHECK(printable("Mix\uFE0F") == "Mix�");
  CHECK(printable("混\u200D") == "混�");
  CHECK(printable("混\u200D\u200D土") == "混��土");
}

TEST_CASE("letters from the right are isolated from the line around them") {
  CHECK(printable("חצר: 4 in") == "\u2068חצר\u2069: 4 in");
  CHECK(printable("זון 2 מזרח, 4 in") == "\u2068זון 2 מזרח\u2069, 4 in");
  CHECK(printable("مسبح and חצר") == "\u2068مسبح\u2069 and \u2068חצר\u2069");
  CHECK(printable("חצר\u200F: 4 in") == "\u2068חצר\u200F\u2069: 4 in");  // its mark inside
  CHECK(printable("\u2068חצר\u2069") == "\u2068חצר\u2069");              // unchanged
  CHECK(printable("\u2068slab\u2069 \u2068חצר") == "�slab� \u2068חצר\u2069");
  CHECK(printable("\u2068חצר\u2069: \u2068חצר\u2069") == "\u2068חצר\u2069: \u2068חצר\u2069");
  CHECK(printable("חצר\u202Eslab") == "\u2068חצר\u2069�slab");
}

TEST_CASE("a text from outside is cut at a character") {
  CHECK(printable("abcdef", 6) == "abcdef");
  CHECK(printable("abcdefg", 6) == "abc...");
  CHECK(printable("混凝土混凝土混", 6) == "混凝土...");
  CHECK(printable("חצר חצר חצר", 7) == "\u2068חצר\u2069 ...");
  CHECK(printable("\x1b\x1b\x1b\x1b\x1b\x1b\x1b", 6) == "␛␛␛...");
  CHECK(printable(std::string(5'000'000, 'a')).size() == longest_shown);
}

TEST_CASE("lines stay lines") {
  CHECK(printable_lines("a\u202Eb\nc\x1b\n") == "a�b\nc␛\n");
  CHECK(printable_lines("") == "");
  CHECK(printable_lines("\r\n") == "␍\n");
}

TEST_CASE("characters one by one, as many as the text has") {
  const std::vector<std::string> shown = shown_characters("a\x1bח\u200F\xff");
  CHECK(shown == std::vector<std::string>{"a", "␛", "ח", "\u200F", "�"});
}

TEST_CASE("columns of what shows nothing or directs") {
  for (const char32_t none : {U'\u2068', U'\u2069', U'\u200D', U'\u200F', U'\uFE0F', U'\u061C'}) {
    CHECK(terminal_columns({.code = none, .bytes = 3, .valid = true}) == 0);
  }
  CHECK(terminal_columns({.code = 0x202E, .bytes = 3, .valid = true}) == 1);  // as it is shown
}

// NOLINTEND(misc-misleading-bidirectional)
