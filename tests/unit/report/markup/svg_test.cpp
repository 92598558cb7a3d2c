#include "report/markup/svg.h"

#include <clocale>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

namespace slabtide {
namespace {

TEST_CASE("text cannot become markup") {
  CHECK(escape_markup("<script>alert(1)</script> & \"west\" 東") ==
        "&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;west&quot; 東");
  CHECK(escape_markup("it's") == "it&#39;s");
  CHECK(escape_markup(std::string_view("a\0b\x1b[31m\x7f\tc\n", 12)) == "a␀b␛[31m␡ c\n");
}

TEST_CASE("times and spans of times stay on one line") {
  CHECK(escape_markup("tool them, 9:10–10:05 AM") == "tool them, 9:10–\u206010:05\u00a0AM");
  CHECK(escape_markup("Thu 11:40 PM–Fri 1:05 AM") ==
        "Thu\u00a011:40\u00a0PM–\u2060Fri\u00a01:05\u00a0AM");
  CHECK(escape_markup("bays 3–5") == "bays 3–5");
  // A joiner from outside could pass one name off as another.
  CHECK(escape_markup("pa\u2060d") == "pa\ufffdd");
}

TEST_CASE("attributes and text are escaped where they are put") {
  CHECK(Element("text").set("data-zone", "\"><b>").text("a < b").str() ==
        "<text data-zone=\"&quot;&gt;&lt;b&gt;\">a &lt; b</text>");
}

TEST_CASE("elements nest, and end as HTML asks") {
  CHECK(Element("g").set("x", 4.5).add(Element("line").set("x1", 1.0)).str() ==
        "<g x=\"4.5\"><line x1=\"1\"/></g>");
  CHECK(Element("input").set("type", "radio").mark("checked").str() ==
        "<input type=\"radio\" checked>");
  CHECK(Element("td").str() == "<td></td>");
  CHECK(Element("path").add(Element("title").text("x")).str() == "<path><title>x</title></path>");
}

TEST_CASE("numbers are short") {
  CHECK(short_number(12.0) == "12");
  CHECK(short_number(0.25) == "0.2");
  CHECK(short_number(0.35, 2) == "0.35");
  CHECK(short_number(-0.04) == "0");
  CHECK(short_number(-3.25, 2) == "-3.25");
  CHECK(short_number(1200.0, 0) == "1200");
  CHECK(short_number(99.96) == "100");
  CHECK_THROWS_AS(short_number(std::numeric_limits<double>::quiet_NaN()), std::invalid_argument);
  CHECK_THROWS_AS(short_number(1.0, 5), std::invalid_argument);
}

TEST_CASE("a path is written as it comes") {
  CHECK(PathData().move_to(0, 1.25).line_to(3, 4).close().str() == "M0 1.2L3 4Z");
  CHECK(PathData().empty());
}

}  // namespace
}  // namespace slabtide
