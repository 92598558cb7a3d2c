#include "core/text.h"

#include <locale>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {

const std::vector<std::string_view> keys{"thickness_in", "thickness_mm", "placing_start", "stamp",
                                         "texture",      "edge",         "crew"};

std::string near(std::string_view word) { return std::string(nearest(word, keys).value_or("-")); }

class CommaDecimals : public std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
};

}  // namespace

TEST_CASE("the word that was meant") {
  CHECK(near("stamp") == "stamp");
  CHECK(near("Stamp") == "stamp");
  CHECK(near("STAMP") == "stamp");
  CHECK(near("stmap") == "stamp");  // two letters swapped: one slip
  CHECK(near("stam") == "stamp");
  CHECK(near("stamps") == "stamp");
  CHECK(near("thickness") == "thickness_in");  // the first of two equally near words
  CHECK(near("thickness-mm") == "thickness_mm");
  CHECK(near("plcaing_strat") == "placing_start");
  CHECK(near("egde") == "edge");
}

TEST_CASE("no word is near enough") {
  CHECK(near("") == "-");
  CHECK(near("x") == "-");
  CHECK(near("broom") == "-");
  CHECK(near("crwd") == "-");  // two slips in four letters
  CHECK(near("slab_thickness_in") == "-");
  CHECK_FALSE(nearest("stamp", {}));
  const std::vector<std::string_view> short_names{"x_m", "y"};
  CHECK_FALSE(nearest("z", short_names));
}

TEST_CASE("numbers take up the whole text") {
  CHECK(parse_number("4.5") == 4.5);
  CHECK(parse_number("+1") == 1.0);
  CHECK(parse_number("-1") == -1.0);
  CHECK(parse_number("1e3") == 1000.0);
  CHECK(parse_number("1E-2") == 0.01);
  CHECK(parse_number(" \t 7 ") == 7.0);
  CHECK(parse_number("007") == 7.0);
  CHECK(parse_number(".5") == 0.5);
  CHECK(parse_number("5.") == 5.0);
  CHECK(parse_number("0.1") == 0.1);
}

TEST_CASE("what is not a finite decimal number is refused") {
  for (const char* wrong :
       {"",       " ",        "+",    "-",    ".",   "e3",   "nan", "-nan", "inf",
        "-inf",   "infinity", "+inf", "0x10", "1,5", "1.5.", "1 2", "1e",   "1e400",
        "-1e400", "+-1",      "-+1",  "--1",  "++1", "4in",  "1\n", "٣"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_number(wrong));
  }
  CHECK_FALSE(parse_number(std::string_view("1\0", 2)));
}

TEST_CASE("numbers do not follow the locale") {
  // Represents a locale that this machine may not have.
  const std::locale before =
      std::locale::global(std::locale(std::locale::classic(), new CommaDecimals));
  CHECK(parse_number("4.5") == 4.5);
  CHECK_FALSE(parse_number("4,5"));
  std::locale::global(before);
}

TEST_CASE("columns in a terminal") {
  CHECK(display_width("") == 0);
  CHECK(display_width("slab") == 4);
  CHECK(display_width("66–41 °F") == 8);
  CHECK(display_width("混凝土") == 6);
  CHECK(display_width("e\u0301") == 1);  // e and a combining accent
  CHECK(display_width("\xff\xfe") == 2);
  CHECK(display_width("a\tb") == 2);
  CHECK(display_width("🙂") == 2);
}

TEST_CASE("text is wrapped at the width, and never inside a word") {
  CHECK(wrap("saw the landing by 19:25", 12, 2) == "saw the\n  landing by\n  19:25");
  CHECK(wrap("saw the landing", 15, 2) == "saw the landing");
  CHECK(wrap("saw the landing", 14, 2) == "saw the\n  landing");
  CHECK(wrap("a delaminated top", 5, 2) == "a\n  delaminated\n  top");
  CHECK(wrap("", 10, 2).empty());
  CHECK(wrap("   ", 10, 2).empty());
  CHECK(wrap("a  b   c", 80, 0) == "a b c");
  CHECK(wrap("word", 0, 0) == "word");
  CHECK(wrap("one two", 0, 1) == "one\n two");
}

TEST_CASE("wrapping counts columns and not bytes") {
  CHECK(wrap("20–25 °F °F °F", 11, 0) == "20–25 °F °F\n°F");
  CHECK(wrap("混凝 土混 凝土", 9, 0) == "混凝 土混\n凝土");
}

TEST_CASE("line ends and leading spaces of the text stay") {
  CHECK(wrap("first line\nsecond", 40, 4) == "first line\n    second");
  CHECK(wrap("first\n\nthird\n", 40, 2) == "first\n\n  third\n");
  CHECK(wrap("  - an item that is long", 12, 4) == "  - an item\n    that is\n    long");
}
