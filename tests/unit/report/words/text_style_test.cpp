#include "slabtide/report/words/text_style.h"

#include <algorithm>
#include <string>

#include <doctest/doctest.h>

#include "core/text.h"

namespace slabtide {
namespace {

// NOLINTBEGIN(misc-misleading-bidirectional): marks that turn the direction of text

TEST_CASE("a finished report shows no name raw, and keeps its own colours") {
  const TextStyle plain{false};
  const TextStyle coloured{true};
  CHECK(plain.finished("pad\u202E \u2028x\n") == "pad� �x\n");
  CHECK(plain.finished("\x1b[1mpad\x1b[0m\n") == "␛[1mpad␛[0m\n");
  const std::string report =
      coloured.heading("walk\u202E") + "  " + coloured.warning("late") + "\n\x1b[8mhidden\n";
  CHECK(coloured.finished(report) ==
        coloured.heading("walk�") + "  " + coloured.warning("late") + "\n␛[8mhidden\n");
  CHECK(coloured.finished("חצר: 4 in\n") == "\u2068חצר\u2069: 4 in\n");
}

TEST_CASE("a cell of a table is as wide as it should be, whatever is in it") {
  for (const char* name : {"walk", "walk\u202Ewalk", "\u202E\u202E\u202E", "חצר", "חצר המשק הגדולה",
                           "混凝土混凝土", "e\u0301e\u0301", "wa\U000E0061lk", "", "a\tb"}) {
    const std::string cell = pad(name, 7);
    CHECK(display_width(cell) == 7);
    CHECK(TextStyle{false}.finished(cell) == cell);
  }
  CHECK(pad("walkway", 4) == "walk");
  CHECK(pad("混凝土", 5) == "混凝 ");
  CHECK(pad("חצר המשק", 5) == "\u2068חצר ה\u2069");
}

TEST_CASE("what stands at a line's end stands there in colour too") {
  const std::string plain = TextStyle{}.both_ends("walk", "8:00 AM");
  const std::string coloured =
      TextStyle{true}.both_ends(TextStyle{true}.heading("walk"), "8:00 AM");
  CHECK(display_width(plain) == text_width);
  CHECK(coloured == "\x1b[1mwalk\x1b[0m" + plain.substr(4));
  CHECK(display_width(TextStyle{false}.finished(TextStyle{}.both_ends("wa\u202Elk", "8:00 AM"))) ==
        text_width);
}

TEST_CASE("a name too long for its heading's line has the rest on indented lines") {
  const TextStyle narrow{.width = 60};
  CHECK(narrow.titled("walk", "4 in thick") == "walk  4 in thick\n");
  const std::string long_name = "Front porch and the landing by the garage side door";
  CHECK(narrow.titled(long_name, "4 in thick") == long_name + "\n  4 in thick\n");
  CHECK(narrow.titled(long_name + " of the neighbor", "4 in thick") ==
        long_name + " of the\n  neighbor\n  4 in thick\n");
  CHECK(narrow.both_ends(long_name + " of the neighbor", "8:00 AM") ==
        long_name + " of the\n  neighbor\n  8:00 AM\n");
}

TEST_CASE("a name too long for its cell keeps its beginning and its end") {
  CHECK(shortened("walk", 4) == "walk");
  CHECK(shortened("Curved walk to the back gate, lower run", 20) == "Curved wal…lower run");
  CHECK(shortened("混凝土混凝土", 7) == "混凝…土");
  for (std::size_t width = 1; width < 45; ++width) {
    CHECK(display_width(shortened("Curved walk to the back gate, lower run", width)) <= width);
  }
}

TEST_CASE("a paragraph in colour breaks where it does without") {
  const TextStyle coloured{true};
  std::string words;
  for (int i = 0; i < 40; ++i) words += "word ";
  const std::string plain = TextStyle{}.paragraph("Tightest " + words, 0, 2);
  CHECK(coloured.paragraph(coloured.heading("Tightest") + " " + words, 0, 2) ==
        coloured.heading("Tightest") + plain.substr(8));
  CHECK(coloured.entry(coloured.heading("Crew"), words, 0, 11).substr(12) ==
        TextStyle{}.entry("Crew", words, 0, 11).substr(4));
}

TEST_CASE("a narrow terminal gets narrow lines") {
  const TextStyle narrow{false, 60};
  std::string words;
  for (int i = 0; i < 40; ++i) words += "word ";
  for (const std::string& text :
       {narrow.paragraph(words, 2, 4), narrow.entry("10:55 AM", words, 2, 15),
        narrow.both_ends(std::string(40, 'x'), "Thu, May 14, 2026")}) {
    std::size_t widest = 0;
    for (std::size_t at = 0; at < text.size();) {
      const std::size_t end = text.find('\n', at);
      widest = std::max(widest, display_width(text.substr(at, end - at)));
      at = end + 1;
    }
    CHECK(widest <= 60);
    CHECK(widest > 50);
  }
  CHECK(narrow.both_ends(std::string(50, 'x'), "Thu, May 14, 2026") ==
        std::string(50, 'x') + "\n  Thu, May 14, 2026\n");
}

// NOLINTEND(misc-misleading-bidirectional)

}  // namespace
}  // namespace slabtide
