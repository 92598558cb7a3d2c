#include <doctest/doctest.h>

#include <filesystem>
#include <string>

#include "cli/golden_case.h"
#include "support/marked_block.h"
#include "support/run_program.h"

// README.md shows a plan, which must be the golden case's real output, between two marks.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path project_dir = SLABTIDE_SOURCE_DIR;
const std::string block_name = "plan output";

}  // namespace

TEST_CASE("README.md shows what the demo job really prints") {
  const fs::path path = project_dir / "README.md";
  const GoldenCase golden{"plan_spring", project_dir / "tests" / "cli" / "plan_spring"};
  const std::string output = updating_golden()
                                 ? run(golden, SLABTIDE_PROGRAM, project_dir / "data").out
                                 : expected_of(golden).out;
  const std::string readme = read_text(path);
  const auto wanted = with_block(readme, block_name, "```text\n" + output + "```\n");
  REQUIRE(wanted);
  if (updating_golden()) write_text(path, *wanted);
  const std::string differs = difference(*wanted, read_text(path));
  CHECK_MESSAGE(differs.empty(), "README.md:\n", differs);
}

TEST_CASE("a block is put between the marks") {
  const std::string readme = "a\n<!-- x -->\nold\n<!-- end of x -->\nz\n";
  CHECK(with_block(readme, "x", "new\n") == "a\n<!-- x -->\nnew\n<!-- end of x -->\nz\n");
  CHECK_FALSE(with_block(readme, "y", "new\n"));
}

}  // namespace slabtide::test
