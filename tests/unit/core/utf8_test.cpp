#include "slabtide/core/utf8.h"

#include <stdexcept>
#include <string>

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

TEST_CASE("what could disturb a terminal is not printed") {
  CHECK(printable("slab 4 in – 混凝土") == "slab 4 in – 混凝土");
  CHECK(printable("a\tb") == "a b");
  CHECK(printable("\x1b[31mred\x1b[0m") == "?[31mred?[0m");
  CHECK(printable("two\r\nlines") == "two??lines");
  CHECK(printable("\xC2\x9B"
                  "31m") == "?31m");  // C1 control sequence introducer
  // NOLINTNEXTLINE(misc-misleading-bidirectional): marks that turn the direction of text
  CHECK(printable("a\u202Eb\u2066c") == "a?b?c");
  CHECK(printable("a\u200Bb\uFEFFc\u2028") == "a?b?c?");  // invisible
  CHECK(printable("\xff\xfe") == "??");
  CHECK(printable(std::string_view("a\0b", 3)) == "a?b");
}
