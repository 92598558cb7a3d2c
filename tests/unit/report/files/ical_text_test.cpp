#include "report/files/ical_text.h"

#include <string>

#include <doctest/doctest.h>

namespace slabtide {
namespace {

/// The text as a reader unfolds it according to RFC 5545: every CRLF followed by a single blank is
/// removed together with the blank.
std::string unfolded(std::string text) {
  for (auto at = text.find("\r\n "); at != std::string::npos; at = text.find("\r\n ", at)) {
    text.erase(at, 3);
  }
  return text;
}

}  // namespace

TEST_CASE("the folded line of RFC 5545, section 3.1, is read as the line it stands for") {
  // Published: the section's own example, all three ways it gives.
  const std::string line = "DESCRIPTION:This is a long description that exists on a long line.";
  const auto read = [](const char* text) { return ical_lines(text); };
  const std::vector<std::string> whole{line};
  CHECK(read("DESCRIPTION:This is a long description that exists on a long line.\r\n") == whole);
  CHECK(read("DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n") ==
        whole);
  CHECK(read("DESCRIPTION:This is a long description\r\n  that exists on a long line.\r\n") ==
        whole);
}

TEST_CASE("lines are read whatever ends them") {
  const std::vector<std::string> both{"A:1", "B:22"};
  CHECK(ical_lines("A:1\r\nB:2\r\n\t2") == both);
  CHECK(ical_lines("A:1\nB:2\n 2\n") == both);
  CHECK(ical_lines("").empty());
  CHECK(ical_lines(" goes on from nothing") == std::vector<std::string>{" goes on from nothing"});
}

TEST_CASE("the text of RFC 5545, section 3.3.11, is escaped as there") {
  // Published: the section's own example.
  CHECK(ical_escaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.") ==
        "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
}

TEST_CASE("what means something in a TEXT is escaped, colons and quotation marks are not") {
  CHECK(ical_escaped("a;b,c\\d") == "a\\;b\\,c\\\\d");
  CHECK(ical_escaped("at 8:05 \"sharp\"") == "at 8:05 \"sharp\"");
  CHECK(ical_escaped("one\r\ntwo\rthree") == "one\\ntwo\\nthree");
  CHECK(ical_escaped("bell\a and\x1b[31m red\x7f, tab\t") == "bell and[31m red\\, tab\t");
  CHECK(ical_escaped("東 é") == "東 é");
  // RFC 5545 has no line breaks other than CR and LF, and no controls above US-ASCII.
  CHECK(ical_escaped("a\u2028b\U000E0041") == "a\u2028b\U000E0041");
}

TEST_CASE("lines up to 75 octets stay, longer ones are folded") {
  const std::string just(75, 'x');
  CHECK(ical_folded(just) == just + "\r\n");
  CHECK(ical_folded(just + "y") == just + "\r\n y\r\n");
  CHECK(ical_folded("") == "\r\n");
  const std::string second(74, 'y');
  CHECK(ical_folded(just + second) == just + "\r\n " + second + "\r\n");
  CHECK(ical_folded(just + second + "z") == just + "\r\n " + second + "\r\n z\r\n");
}

TEST_CASE("no character is torn by folding, wherever it falls") {
  for (const std::string character : {"é", "東", "👷"}) {
    for (std::size_t lead = 0; lead < 80; ++lead) {
      std::string line(lead, 'x');
      for (int i = 0; i < 60; ++i) line += character;
      const std::string folded = ical_folded(line);
      CHECK(unfolded(folded) == line + "\r\n");
      std::size_t start = 0;
      for (auto end = folded.find("\r\n"); end != std::string::npos;
           start = end + 2, end = folded.find("\r\n", start)) {
        CHECK(end - start <= 75);
        // A UTF-8 continuation byte is 10xxxxxx (RFC 3629): no line may begin with one.
        const std::size_t content = start == 0 ? 0 : start + 1;
        CHECK((static_cast<unsigned char>(folded[content]) & 0xC0U) != 0x80U);
      }
    }
  }
}

TEST_CASE("instants are told in UTC to the second") {
  CHECK(ical_utc(UtcTime(Date(2026, 5, 14), boost::posix_time::time_duration(13, 30, 5))) ==
        "20260514T133005Z");
}

TEST_CASE("an identifier is the version 5 UUID of its name") {
  // Expected: Python 3.11's uuid.uuid5 in the same name space, which is an independent
  // implementation; it gives RFC 9562's example (appendix A.4) for "www.example.com" in the DNS
  // name space.
  CHECK(uuid_of_name("landing") == "e416f8e9-18af-5284-9f42-6e6b5d0b67c4");
  CHECK(uuid_of_name("東") == "382d7db1-1770-56a7-9680-024357639ba7");
  CHECK(uuid_of_name("") == "ffa4b0c8-0b5f-5bbe-855e-734773be1aeb");
}

}  // namespace slabtide
