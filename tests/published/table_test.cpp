#include "published/table.h"

#include <array>
#include <filesystem>
#include <stdexcept>

#include <doctest/doctest.h>

#include "published/does_not_meet.h"
#include "support/marked_block.h"
#include "support/run_program.h"

// tests/published/README.md describes what the numbers are based on. It is generated from what the
// other tests here record in each run: an outdated table fails the test, and SLABTIDE_UPDATE_GOLDEN
// renews it.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path seen_dir = SLABTIDE_SEEN_DIR;
const fs::path main_readme = fs::path(SLABTIDE_SOURCE_DIR) / "README.md";
const fs::path readme = fs::path(SLABTIDE_SOURCE_DIR) / "tests" / "published" / "README.md";

struct Module {
  std::string_view heading;
  std::vector<const char*> programs;
};

const std::array<Module, 3> tested_modules{
    {{"Weather", {"published_weather", "reference_weather"}},
     {"Slab", {"published_slab"}},
     {"Day", {"published_day", "published_compare", "published_reference"}}}};

std::vector<ModuleRows> all_rows() {
  std::vector<ModuleRows> result;
  for (const Module& module : tested_modules) {
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
  return {"drying",   "a table", "published", "kg",        tolerance,
          "measured", "at noon", "0.5",       0.5 + apart, apart};
}

std::string sample_table(double apart) {
  return published_table({{"Slab", {sample_row(0.01, apart)}}}, {});
}

std::vector<MissedCheck> sample_list(double apart) {
  return {{"drying", "how fast it dries", "Nobody knows.", {{"at noon", apart}}}};
}

/// `file` with `block` between the marks `name`. Fails if it differs, or updates it.
void check_block(const fs::path& file, const std::string& name, const std::string& block,
                 bool is_same(const std::string&, const std::string&)) {
  const std::string was = read_text(file);
  const auto wanted = with_block(was, name, block);
  REQUIRE(wanted);
  if (is_same(*wanted, was)) return;
  if (updating_golden()) return write_text(file, *wanted);
  FAIL(file.string(), " is out of date:\n", difference(was, *wanted));
}

}  // namespace

TEST_CASE("tests/published/README.md tells every check, and what this run saw of it") {
  check_block(readme, "published checks", published_table(all_rows(), does_not_meet()), same_table);
}

TEST_CASE("README.md tells what is not met") {
  const auto same = [](const std::string& one, const std::string& other) { return one == other; };
  check_block(main_readme, "not met", missed_table(all_rows(), does_not_meet()), same);
}

TEST_CASE("every row that is listed not to meet was seen") {
  std::vector<SeenRow> rows;
  for (const ModuleRows& module : all_rows())
    rows.insert(rows.end(), module.rows.begin(), module.rows.end());
  for (const std::string& fault : never_seen(rows, does_not_meet())) FAIL_CHECK(fault);
}

TEST_CASE("every row that misses is listed, and every listed one misses by what is listed") {
  for (const ModuleRows& module : all_rows()) {
    for (const SeenRow& row : module.rows) {
      const std::string fault = unannounced(row, does_not_meet());
      CHECK_MESSAGE(fault.empty(), row.what, ", ", row.row, ": ", fault);
    }
  }
}

TEST_CASE("a row comes back from its line") {
  SeenRow row = sample_row(0.008, -0.0066);
  row.because = "half the last digit";
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
  CHECK(sample_table(0.0041).find(
            "| drying | a table | published | 1 |  | 0.01 kg | measured | +0.004 |\n") !=
        std::string::npos);
  CHECK(sample_table(0.0041).find("| at noon | 0.5 | 0.504 | +0.004 | 0.01 |\n") !=
        std::string::npos);
  CHECK(same_table(sample_table(0.0044), sample_table(0.0046)));
  CHECK(same_table(sample_table(0.0004), sample_table(0.0006)));
  CHECK_FALSE(same_table(sample_table(0.004), sample_table(0.006)));
  CHECK_FALSE(same_table(sample_table(0.004), sample_table(0.004) + "more\n"));
  CHECK_FALSE(
      same_table(sample_table(0.004), published_table({{"Day", {sample_row(0.01, 0.004)}}}, {})));
}

TEST_CASE("a row joins the list, leaves it or moves only when that is announced") {
  const SeenRow met = sample_row(0.01, -0.01);
  const SeenRow missed = sample_row(0.01, -0.0523);
  CHECK(unannounced(met, {}).empty());
  CHECK(unannounced(missed, {}) ==
        "misses and does_not_meet.cpp does not list it: {\"at noon\", -0.052}");
  CHECK(unannounced(missed, sample_list(-0.052)).empty());
  CHECK(unannounced(missed, sample_list(-0.053)).empty());  // rounding by another compiler
  CHECK(unannounced(met, sample_list(-0.052)) == "meets, but does_not_meet.cpp lists it");
  const std::string moved = "misses by other than does_not_meet.cpp says, ";
  CHECK(unannounced(missed, sample_list(-0.05)) == moved + "-0.05: {\"at noon\", -0.052}");
  CHECK(unannounced(missed, sample_list(-0.06)) == moved + "-0.06: {\"at noon\", -0.052}");
  CHECK(unannounced(missed, sample_list(0.052)) == moved + "+0.052: {\"at noon\", -0.052}");
}

TEST_CASE("a listed row that no test has any more is named") {
  CHECK(never_seen({sample_row(0.01, 0.05)}, sample_list(0.05)).empty());
  CHECK(never_seen({}, sample_list(0.05)) ==
        std::vector<std::string>{"does_not_meet.cpp lists drying, at noon: no such row"});
}

TEST_CASE("what is not met stands in both tables by what is listed") {
  const std::vector<ModuleRows> seen{{"Slab", {sample_row(0.01, 0.0496)}}};
  const std::string table = published_table(seen, sample_list(0.05));
  CHECK(
      table.find("**drying** (allowed: 0.01 kg). Nobody knows.\n\n| figure | off by |\n|---|---|\n"
                 "| at noon | +0.050 |\n") != std::string::npos);
  CHECK(table.find("| published | 1 | 1 | 0.01 kg | measured | +0.050 |\n") != std::string::npos);
  CHECK(table.find("| +0.050 | 0.01: not met |\n") != std::string::npos);
  CHECK(missed_table(seen, sample_list(0.05)) ==
        "| what | not met | off by up to | why |\n|---|---|---|---|\n"
        "| how fast it dries | 1 of 1 | +0.05 kg | Nobody knows. |\n");
  std::vector<MissedCheck> minor = sample_list(0.05);
  minor.front().is_minor = true;
  CHECK(missed_table(seen, minor) ==
        "| what | not met | off by up to | why |\n|---|---|---|---|\n\n"
        "Far smaller than what a forecast is off by: how fast it dries (+0.05 kg).\n");
}

}  // namespace slabtide::test
