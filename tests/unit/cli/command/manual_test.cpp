#include <doctest/doctest.h>

#include "cli/command/commands.h"
#include "cli/command/manual.h"
#include "support/run_program.h"

namespace slabtide {

namespace {

/// What mandoc, a reader of manual pages, reports about a page; empty if nothing.
std::string faults_of(const std::string& page) {
  const test::TempFolder folder;
  test::write_text(folder.path() / "page.1", page);
  const auto lint =
      test::run_program({"mandoc", "-T", "lint", "-W", "warning", "page.1"}, folder.path());
  return lint.out + lint.err;
}

/// The page as a reader sees it, without bold and underline.
std::string as_read(const std::string& page) {
  const test::TempFolder folder;
  test::write_text(folder.path() / "page.1", page);
  const auto read =
      test::run_program({"sh", "-c", "mandoc -T utf8 page.1 | sed 's/.\x08//g'"}, folder.path());
  return read.out;
}

}  // namespace

TEST_CASE("every manual page reads without a fault and tells every option") {
  std::vector<CommandLine> lines;
  for (const Command& command : commands()) lines.push_back(command.line());
  CHECK(faults_of(manual_page(lines)) == "");
  for (const CommandLine& line : lines) {
    CAPTURE(line.name);
    const std::string page = manual_page(line);
    CHECK(faults_of(page) == "");
    const std::string text = as_read(page);
    CHECK(text.find("slabtide-" + line.name + " - ") != std::string::npos);
    for (const Option& option : line.options) {
      CAPTURE(option.name);
      CHECK(text.find("--" + option.name) != std::string::npos);
    }
  }
}

TEST_CASE("text that looks like a request, or like an escape, stays text") {
  CommandLine line;
  line.name = "odd";
  line.summary = "back\\slash";
  line.options = {{"dot", "", ".TH is what it begins with", false}};
  line.details = "'so does this\n.and this\n";
  const std::string text = as_read(manual_page(line));
  CHECK(text.find("back\\slash") != std::string::npos);
  CHECK(text.find(".TH is what it begins with") != std::string::npos);
  CHECK(text.find("'so does this") != std::string::npos);
  CHECK(text.find(".and this") != std::string::npos);
}

}  // namespace slabtide
