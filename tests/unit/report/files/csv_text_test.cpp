#include "report/files/csv_text.h"

#include <doctest/doctest.h>

namespace slabtide {

TEST_CASE("the records of RFC 4180, section 2, are written as there") {
  // Published: the examples of rules 1, 5, 6 and 7.
  CHECK(csv_record({"aaa", "bbb", "ccc"}) == "aaa,bbb,ccc\r\n");
  CHECK(csv_record({"aaa", "b\r\nbb", "ccc"}) == "aaa,\"b\r\nbb\",ccc\r\n");
  CHECK(csv_record({"aaa", "b\"bb", "ccc"}) == "aaa,\"b\"\"bb\",ccc\r\n");
}

TEST_CASE("empty cells and commas keep their places") {
  CHECK(csv_record({"", "", ""}) == ",,\r\n");
  CHECK(csv_record({"a,b", "", "c"}) == "\"a,b\",,c\r\n");
  CHECK(csv_record({""}) == "\r\n");
  // Characters that do not end a line in CSV, and need no escaping.
  CHECK(csv_record({"a\u2028b", "\u202Ec\U000E0041"}) == "a\u2028b,\u202Ec\U000E0041\r\n");
}

TEST_CASE("a text that a spreadsheet would compute gets an apostrophe, and one that has one too") {
  for (const char* text :
       {"=1+1", "+1", "-1", "@sum", "\tx", "\rx", "\nx", "'x", " =1+1", "|cmd", "  |cmd",
        "\uff1d1+1", "\uff0b1", "\uff0d1", "\uff20sum", "\uff5cx", "\u00a0=1", "\u3000@x"}) {
    CHECK(csv_safe(text) == std::string("'").append(text));
  }
  for (const char* text : {"", "landing", "a=1", "1-1", " landing", "a|b"})
    CHECK(csv_safe(text) == text);
}

}  // namespace slabtide
