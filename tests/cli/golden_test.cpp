#include <doctest/doctest.h>

#include <filesystem>
#include <stdexcept>
#include <string>

#include "cli/golden_case.h"
#include "cli/json_fields.h"
#include "support/run_program.h"

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path source_dir = SLABTIDE_SOURCE_DIR;

}  // namespace

TEST_CASE("every golden case does what its folder says") {
  const auto cases = golden_cases(source_dir / "tests" / "cli");
  REQUIRE(!cases.empty());
  for (const GoldenCase& golden : cases) {
    const Observed observed = run(golden, SLABTIDE_PROGRAM, source_dir / "data");
    if (updating_golden()) update(golden, observed);
    const std::string differs = difference(expected_of(golden), observed);
    INFO("tests/cli/", golden.name, ", mended by tools/update-golden where it is meant:\n",
         differs);
    CHECK(differs.empty());
  }
}

TEST_CASE("a golden case that differs is told") {
  const Observed expected{.out = "a\nb\n", .err = "", .code = 0, .files = {{"kept.json", "1\n"}}};
  CHECK(difference(expected, expected).empty());

  Observed actual = expected;
  actual.out = "a\nc\n";
  actual.code = 2;
  actual.files = {{"other.json", ""}};
  const std::string told = difference(expected, actual);
  CHECK(told.find("-b\n+c\n") != std::string::npos);
  CHECK(told.find("exit code: expected 0, was 2") != std::string::npos);
  CHECK(told.find("did not write kept.json") != std::string::npos);
  CHECK(told.find("wrote other.json") != std::string::npos);
}

TEST_CASE("fields of a JSON document are told by their pointers") {
  const std::string document = R"({"a": [{"b/c": "x"}, null], "d": 1.50})";
  CHECK(json_fields(document, "# of it\n\n/a was 3\n/a/0/b~1c\n/a/1 null\n/a/2\n/d 2\n/a/0\n") ==
        "# of it\n\n/a list of 2\n/a/0/b~1c \"x\"\n/a/1 null\n/a/2 is not there\n/d 1.5\n"
        "/a/0 object of 1\n");
  CHECK_THROWS_AS(json_fields("{", "/a\n"), std::invalid_argument);
}

TEST_CASE("a command line is split as a shell would") {
  const CommandLine command = split_command("NO_COLOR=1 plan 'my job.toml' --place \"\" a=b\n");
  CHECK(command.environment.at("NO_COLOR") == "1");
  const std::vector<std::string> words{"plan", "my job.toml", "--place", "", "a=b"};
  CHECK(command.words == words);
  CHECK_THROWS_AS(split_command("plan 'open"), std::invalid_argument);
}

}  // namespace slabtide::test
