#include "published/table.h"

#include <array>
#include <filesystem>
#include <stdexcept>

#include <doctest/doctest.h>

#include "support/marked_block.h"
#include "support/run_program.h"

// tests/published/README.md tells what the numbers rest on. It is made of what the other tests
// here saw, each time they run: a table that is out of date fails, SLABTIDE_UPDATE_GOLDEN renews
// it.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path seen_dir = SLABTIDE_SEEN_DIR;
const fs::path readme = fs::path(SLABTIDE_SOURCE_DIR) / "tests" / "published" / "README.md";

struct Module {
  std::string_view heading;
  std::vector<const char*> programs;
};

const std::array<Module, 3> modules{{{"Weather", {"published_weather", "reference_weather"}},
                                     {"Slab", {"published_slab"}},
                                     {"Day", {"published_day", "published_compare"}}}};

std::vector<ModuleRows> all_rows() {
  std::vector<ModuleRows> result;
  for (const Module& module : modules) {
    ModuleRows rows{module.heading, {}};
    for (const char* program : module.programs) {
      const auto seen = rows_in(seen_dir / (std::string(program) + ".tsv"));
      REQUIRE_MESSAGE(!seen.empty(), program, " has not run: ctest runs it before this");
      rows.rows.insert(rows.rows.end(), seen.begin(), seen.end());
    }
    result.push_back(std::move(rows));
  }
  return result;
}

SeenRow sample_row(double tolerance, double apart) {
  return {"drying", "a table", "published", "kg",        tolerance,
          false,    "at noon", "0.5",       0.5 + apart, apart};
}

std::string sample_table(double apart) {
  return published_table({{"Slab", {sample_row(0.01, apart)}}});
}

}  // namespace

TEST_CASE("tests/published/README.md tells every check, and what this run saw of it") {
  const std::string was = read_text(readme);
  const std::string table = published_table(all_rows());
  const auto wanted = with_block(was, "published checks", table);
  REQUIRE(wanted);
  if (same_table(*wanted, was)) return;
  if (updating_golden()) return write_text(readme, *wanted);
  FAIL("tests/published/README.md is out of date:\n", difference(was, *wanted));
}

TEST_CASE("no tolerance is much wider than the disagreement it covers") {
  for (const ModuleRows& module : all_rows()) {
    for (const std::string& slack : slack_tolerances(module.rows)) FAIL_CHECK(slack);
  }
}

TEST_CASE("a row comes back from its line") {
  SeenRow row = sample_row(0.008, -0.0066);
  row.as_given = true;
  const TempFolder folder;
  write_text(folder.path() / "rows", line_of(row) + line_of(sample_row(0.1, 0.0)));
  const auto rows = rows_in(folder.path() / "rows");
  REQUIRE(rows.size() == 2);
  CHECK(line_of(rows[0]) == line_of(row));
  CHECK(rows[0].seen == row.seen);
  CHECK(rows_in(folder.path() / "none").empty());
  row.source = "a\tb";
  CHECK_THROWS_AS(line_of(row), std::invalid_argument);
}

TEST_CASE("a table is the same but for the last digit of what is measured") {
  CHECK(sample_table(0.0041).find("| drying | a table | published | 1 | 0.01 kg | +0.004 |\n") !=
        std::string::npos);
  CHECK(sample_table(0.0041).find("| at noon | 0.5 | 0.504 | +0.004 | 0.01 |\n") !=
        std::string::npos);
  CHECK(same_table(sample_table(0.0044), sample_table(0.0046)));
  CHECK(same_table(sample_table(0.0004), sample_table(0.0006)));
  CHECK_FALSE(same_table(sample_table(0.004), sample_table(0.006)));
  CHECK_FALSE(same_table(sample_table(0.004), sample_table(0.004) + "more\n"));
  CHECK_FALSE(
      same_table(sample_table(0.004), published_table({{"Day", {sample_row(0.01, 0.004)}}})));
}

TEST_CASE("a wide tolerance is named, the rounding of the figures is not") {
  CHECK(slack_tolerances({sample_row(0.01, 0.005)}).empty());
  CHECK(slack_tolerances({sample_row(0.01, 0.001), sample_row(0.01, -0.005)}).empty());
  CHECK(slack_tolerances({sample_row(0.01, 0.001)}).size() == 1);
  SeenRow rounded = sample_row(0.01, 0.001);
  rounded.as_given = true;
  CHECK(slack_tolerances({rounded}).empty());
}

}  // namespace slabtide::test
