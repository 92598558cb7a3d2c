#include <doctest/doctest.h>

#include <filesystem>
#include <optional>
#include <string>

#include "cli/golden_case.h"
#include "support/run_program.h"

// README.md shows a plan. It is the real one: the golden case's output, between two marks.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path source_dir = SLABTIDE_SOURCE_DIR;
const std::string begin_mark = "<!-- plan output -->\n";
const std::string end_mark = "<!-- end of plan output -->\n";

/// `readme` with `block` between the marks; nothing where a mark is missing.
std::optional<std::string> with_block(const std::string& readme, const std::string& block) {
  const auto begin = readme.find(begin_mark);
  const auto end = readme.find(end_mark);
  if (begin == std::string::npos || end == std::string::npos || end < begin) return std::nullopt;
  return readme.substr(0, begin + begin_mark.size()) + block + readme.substr(end);
}

}  // namespace

TEST_CASE("README.md shows what the demo job really prints") {
  const fs::path path = source_dir / "README.md";
  const GoldenCase golden{"plan_spring", source_dir / "tests" / "cli" / "plan_spring"};
  const std::string output =
      blessing() ? run(golden, SLABTIDE_PROGRAM, source_dir / "data").out : expected_of(golden).out;
  const std::string readme = read_text(path);
  const auto wanted = with_block(readme, "```text\n" + output + "```\n");
  REQUIRE(wanted);
  if (blessing()) write_text(path, *wanted);
  const std::string differs = difference(*wanted, read_text(path));
  CHECK_MESSAGE(differs.empty(), "README.md:\n", differs);
}

TEST_CASE("a block is put between the marks") {
  const std::string readme = "a\n" + begin_mark + "old\n" + end_mark + "z\n";
  CHECK(with_block(readme, "new\n") == "a\n" + begin_mark + "new\n" + end_mark + "z\n");
  CHECK_FALSE(with_block("no marks", "new\n"));
}

}  // namespace slabtide::test
