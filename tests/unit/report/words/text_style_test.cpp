#include "slabtide/report/words/text_style.h"

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
  const std::string plain = both_ends("walk", "8:00 AM");
  const std::string coloured = both_ends(TextStyle{true}.heading("walk"), "8:00 AM");
  CHECK(display_width(plain) == text_width);
  CHECK(coloured == "\x1b[1mwalk\x1b[0m" + plain.substr(4));
  CHECK(display_width(TextStyle{false}.finished(both_ends("wa\u202Elk", "8:00 AM"))) == text_width);
}

// NOLINTEND(misc-misleading-bidirectional)

}  // namespace
}  // namespace slabtide
