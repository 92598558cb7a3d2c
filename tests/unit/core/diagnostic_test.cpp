#include "slabtide/core/diagnostic.h"

#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "core/text.h"

using namespace slabtide;

namespace {

const std::string job_text =
    "name = \"Landing\"\n"
    "[zone]\n"
    "  thickness_in = 40\n"
    "\n"
    "thickness_mm = 100\n";

Diagnostic finding(std::string message, std::optional<SourcePosition> where = std::nullopt) {
  return {
      .key = "", .message = std::move(message), .where = where, .also_where = {}, .next_step = ""};
}

std::string at_column(std::string_view line, std::size_t column) {
  return render(finding("wrong", SourcePosition{1, column}), "f", line);
}

/// The widest line of a rendering, in terminal columns.
std::size_t widest(std::string_view rendered) {
  std::size_t max = 0;
  while (!rendered.empty()) {
    const std::size_t end = rendered.find('\n');
    max = std::max(max, display_width(rendered.substr(0, end)));
    rendered.remove_prefix(end + 1);
  }
  return max;
}

}  // namespace

TEST_CASE("a finding with all its parts") {
  const Diagnostic d{.severity = Severity::error,
                     .key = "zone.thickness_in",
                     .message = "is 40, expected 2 to 24",
                     .where = SourcePosition{3, 18},
                     .also_where = SourcePosition{5, 1},
                     .next_step = "Give the slab's thickness once, in inches or in millimetres"};
  CHECK(render(d, "jobs/landing.toml", job_text) ==
        "jobs/landing.toml:3:18: zone.thickness_in: is 40, expected 2 to 24\n"
        "      thickness_in = 40\n"
        "                     ^\n"
        "  also here: jobs/landing.toml:5\n"
        "  Give the slab's thickness once, in inches or in millimetres\n");
}

TEST_CASE("absent parts are left out") {
  CHECK(render(finding("it is empty"), "job.toml", "") == "job.toml: it is empty\n");
  CHECK(render(finding("it is empty"), "", "") == "it is empty\n");
  CHECK(render(finding("odd", SourcePosition{2, 1}), "", job_text) ==
        "2:1: odd\n"
        "    [zone]\n"
        "    ^\n");
  Diagnostic d = finding("odd");
  d.also_where = SourcePosition{5, 1};
  d.key = "zone";
  CHECK(render(d, "", job_text) == "zone: odd\n  also here: line 5\n");
}

TEST_CASE("a warning says so") {
  Diagnostic d = finding("no wind given", SourcePosition{2, 2});
  d.severity = Severity::warning;
  d.key = "zone";
  CHECK(render(d, "job.toml", job_text) ==
        "job.toml:2:2: zone: warning: no wind given\n"
        "    [zone]\n"
        "     ^\n");
}

TEST_CASE("lines that end in CR LF are quoted without the CR") {
  CHECK(render(finding("odd", SourcePosition{2, 3}), "f", "one\r\ntwo\r\nthree\r\n") ==
        "f:2:3: odd\n    two\n      ^\n");
}

TEST_CASE("a byte order mark is not quoted and does not count") {
  CHECK(at_column("\xEF\xBB\xBFname = 1", 1) == "f:1:1: wrong\n    name = 1\n    ^\n");
}

TEST_CASE("tabs are single spaces and unprintable bytes visible, one column each") {
  CHECK(at_column("\ta = \x1b[31m7", 11) ==
        "f:1:11: wrong\n"
        "     a = ␛[31m7\n"
        "              ^\n");
  CHECK(render(finding("odd", SourcePosition{1, 3}), "f", std::string_view("a\0\xff=1\n", 6)) ==
        "f:1:3: odd\n    a␀�=1\n      ^\n");
}

TEST_CASE("a quoted line keeps its order around letters from the right, and its caret") {
  CHECK(at_column("name = \"חצר 2\" x", 16) ==
        "f:1:16: wrong\n"
        "    name = \"\u2068חצר\u2069 2\" x\n"
        "                   ^\n");
  // NOLINTNEXTLINE(misc-misleading-bidirectional): a mark that turns the direction of text
  CHECK(at_column("name = \"a\u202Eb\" x", 14) ==
        "f:1:14: wrong\n"
        "    name = \"a�b\" x\n"
        "                 ^\n");
}

TEST_CASE("the caret stands under the character, whatever its bytes and columns") {
  CHECK(at_column("wand = \"Südwall\" x", 18) ==
        "f:1:18: wrong\n"
        "    wand = \"Südwall\" x\n"
        "                     ^\n");
  CHECK(at_column("混凝土 x", 5) ==
        "f:1:5: wrong\n"
        "    混凝土 x\n"
        "           ^\n");
  CHECK(at_column("xe\u0301", 3) == "f:1:3: wrong\n    xe\u0301\n     ^\n");
  CHECK(at_column("e\u0301 x", 4) == "f:1:4: wrong\n    e\u0301 x\n      ^\n");
}

TEST_CASE("a position past the end of its line points behind it") {
  CHECK(at_column("a = ", 99) == "f:1:99: wrong\n    a =\n        ^\n");
  CHECK(at_column("a", 0) == "f:1:0: wrong\n    a\n    ^\n");
}

TEST_CASE("a line that is blank or not there is not quoted") {
  CHECK(render(finding("odd", SourcePosition{4, 1}), "f", job_text) == "f:4:1: odd\n");
  CHECK(render(finding("odd", SourcePosition{6, 1}), "f", job_text) == "f:6:1: odd\n");
  CHECK(render(finding("odd", SourcePosition{99, 7}), "f", job_text) == "f:99:7: odd\n");
  CHECK(render(finding("odd", SourcePosition{1, 1}), "f", "") == "f:1:1: odd\n");
  CHECK(render(finding("odd", SourcePosition{1, 1}), "f", " \t\r\n") == "f:1:1: odd\n");
}

TEST_CASE("a line of 76 columns is quoted whole, a longer one is cut around the caret") {
  const std::string digits = "0123456789";
  std::string line;
  for (int i = 0; i < 20; ++i) {
    line += digits;
  }
  CHECK(at_column(line.substr(0, 76), 76) ==
        "f:1:76: wrong\n    " + line.substr(0, 76) + "\n" + std::string(79, ' ') + "^\n");
  CHECK(at_column(line.substr(0, 76), 77) ==  // the caret has no room after it
        "f:1:77: wrong\n    ..." + line.substr(6, 70) + "\n" + std::string(77, ' ') + "^\n");
  CHECK(at_column(line.substr(0, 77), 1) ==
        "f:1:1: wrong\n    " + line.substr(0, 70) + "...\n    ^\n");
  CHECK(at_column(line.substr(0, 77), 77) ==
        "f:1:77: wrong\n    ..." + line.substr(7, 70) + "\n" + std::string(76, ' ') + "^\n");
  CHECK(at_column(line, 101) == "f:1:101: wrong\n    ..." + line.substr(65, 70) + "...\n" +
                                    std::string(4 + 3 + 35, ' ') + "^\n");
  CHECK(at_column(line, 999) == "f:1:999: wrong\n    ..." + line.substr(130, 70) + "\n" +
                                    std::string(4 + 3 + 70, ' ') + "^\n");
}

TEST_CASE("a line as long as a file is cut around the caret") {
  std::string line(3000000, 'x');
  line[2000000] = '!';
  CHECK(at_column(line, 2000001) == "f:1:2000001: wrong\n    ..." + std::string(35, 'x') + "!" +
                                        std::string(34, 'x') + "...\n" + std::string(42, ' ') +
                                        "^\n");
  CHECK(at_column(line, 9000000) ==
        "f:1:9000000: wrong\n    ..." + std::string(70, 'x') + "\n" + std::string(77, ' ') + "^\n");
}

TEST_CASE("no quotation is over 80 columns and no caret beside it, wherever it points") {
  std::string line;
  for (int i = 0; i < 60; ++i) {
    line += i % 3 == 0 ? "土" : i % 3 == 1 ? "x" : "\t\x01";
  }
  for (std::size_t column = 1; column < 100; ++column) {
    CAPTURE(column);
    CHECK(widest(at_column(line, column)) <= 80);
  }
}

TEST_CASE("a message cannot disturb the terminal or add lines") {
  Diagnostic d = finding("no key \"a\x1b[2J\nb\"");
  d.key = "a\nb";
  d.next_step = "Did you mean \"a\rb\"?";
  CHECK(render(d, "j\x07ob", "") == "j␇ob: a␊b: no key \"a␛[2J␊b\"\n  Did you mean \"a␍b\"?\n");
}

TEST_CASE("errors make a reading fail, warnings do not") {
  Diagnostic warning = finding("w");
  warning.severity = Severity::warning;
  CHECK_FALSE(has_error({}));
  CHECK_FALSE(has_error({warning}));
  CHECK(has_error({warning, finding("e")}));
}

TEST_CASE("all findings: errors first, each kind by its place, those without one last") {
  Diagnostic early_warning = finding("early", SourcePosition{1, 1});
  early_warning.severity = Severity::warning;
  CHECK(render_all({early_warning, finding("nowhere"), finding("late", SourcePosition{9, 1}),
                    finding("second", SourcePosition{8, 5}), finding("first", SourcePosition{8, 2}),
                    finding("third", SourcePosition{8, 5})},
                   "f", "") ==
        "f:8:2: first\n"
        "f:8:5: second\n"
        "f:8:5: third\n"
        "f:9:1: late\n"
        "f: nowhere\n"
        "f:1:1: warning: early\n");
  CHECK(render_all({}, "f", "").empty());
}

TEST_CASE("after twenty findings the rest are counted") {
  std::vector<Diagnostic> many;
  std::string twenty;
  for (int i = 1; i <= 20; ++i) {
    many.push_back(finding(std::to_string(i)));  // equal positions: their order is kept
    twenty += "f: " + std::to_string(i) + "\n";
  }
  CHECK(render_all(many, "f", "") == twenty);
  many.push_back(finding("e"));
  CHECK(render_all(many, "f", "") == twenty + "1 error more not shown\n");
  many.push_back(finding("e"));
  CHECK(render_all(many, "f", "") == twenty + "2 errors more not shown\n");
  many.push_back(finding("w"));
  many.back().severity = Severity::warning;
  CHECK(render_all(many, "f", "") == twenty + "2 errors and 1 warning more not shown\n");
}
