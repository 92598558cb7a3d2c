#include "job/toml/loose_values.h"

#include <doctest/doctest.h>

#include <string>

namespace slabtide {

namespace {

std::string loose(std::string_view text) { return quote_loose_values(text).text; }

}  // namespace

TEST_CASE("what TOML has no form for is put into quotation marks") {
  CHECK(loose("date = 8/3/2026\n") == "date = \"8/3/2026\"\n");
  CHECK(loose("width = 4'6\"  # wide\n") == "width = \"4'6\\\"\"  # wide\n");
  CHECK(loose("start = 8:00 AM\r\nx = 1") == "start = \"8:00 AM\"\r\nx = 1");
  CHECK(loose("hauling = pump") == "hauling = \"pump\"");
  CHECK(loose("w_cm = .45") == "w_cm = \".45\"");
  CHECK(loose("a = [[0, 0], [4'6\", 0],\n # b = c\n [12 ft, 3]]\n") ==
        "a = [[0, 0], [\"4'6\\\"\", 0],\n # b = c\n [\"12 ft\", 3]]\n");
  CHECK(loose("border = { width = 1 ft, finish = broom }\n") ==
        "border = { width = \"1 ft\", finish = \"broom\" }\n");
  CHECK(loose("finish = “stamp”\n") == "finish = \"stamp\"\n");
}

TEST_CASE("TOML is left as it is") {
  for (const char* text :
       {"", "a", "= 3", "a = 4.5 # b = c d\n", "a = -1_000\nb = +1.5e3\nc = 0x1F\nd = inf\n",
        "d = 2026-05-14\nt = 07:30:00\ni = 2026-05-14T07:30:00-05:00\nj = 2026-05-14 07:30:00\n",
        "n = \"it's = 4 ft\"\nm = 'a # b'\n\"a b\" = true\n", "[zone.face]\n[[zone]]\n# x = 4 ft\n",
        "t = \"\"\"\na = 4 ft\n\"\"\"\nu = '''\nb = 4 ft'''\n",
        "a = []\nb = {}\nc = [\n 1, 2,\n]\n", "a = \"open\nb = 3\n", "a = [1, 2\n", "a = { b = 1\n",
        "a = \n"}) {
    INFO(text);
    CHECK(loose(text) == text);
    CHECK(quote_loose_values(text).added.empty());
  }
}

TEST_CASE("positions are told in the text that was given") {
  const LooseText read = quote_loose_values("ok = 1\na = [4'6\", é, 8]\n");
  REQUIRE(read.text == "ok = 1\na = [\"4'6\\\"\", \"é\", 8]\n");
  CHECK(read.original({2, 6}).column == 6);    // the first value's quotation mark
  CHECK(read.original({2, 15}).column == 12);  // é
  CHECK(read.original({2, 20}).column == 15);  // 8
  CHECK(read.original({1, 6}).column == 6);
}

TEST_CASE("lists nested without end are passed over") {
  const std::string deep = "a = " + std::string(100000, '[') + "\nb = 4 ft\n";
  CHECK(loose(deep).size() >= deep.size());
}

}  // namespace slabtide
