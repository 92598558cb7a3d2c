#include <filesystem>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "bad_input/cases.h"
#include "support/run_program.h"

// A table must not claim one thing and test another.

namespace slabtide::test {
namespace {

const std::string yard = "a = 1\nb = 2\n\na = 1\nc = 3\n";

const std::string two_cases =
    "# About them.\n\n"
    "== one.toml: yard\n  b = 2\n+ b = 3\n=>\none.toml:3:1: twice\n\n"
    "== two.toml\n+ nothing\n=>\ntwo.toml: no\n\n  do this\n";

}  // namespace

TEST_CASE("an edit puts in, takes out and replaces lines of its base") {
  CHECK(edited(yard, {"  b = 2", "+ d = 4"}) == "a = 1\nb = 2\nd = 4\n\na = 1\nc = 3\n");
  CHECK(edited(yard, {"- a = 1", "+ a = 0", "  c = 3"}) == "a = 1\nb = 2\n\na = 0\nc = 3\n");
  CHECK(edited(yard, {"- b = 2", "-", "...", "- c = 3"}) == "a = 1\na = 1\n");
  CHECK(edited(yard, {"  b = 2", "", "+", "+ e = 5"}) == "a = 1\nb = 2\n\n\ne = 5\na = 1\nc = 3\n");
  CHECK(edited("", {"+ whole", "+", "+   of it"}) == "whole\n\n  of it\n");
}

TEST_CASE("an edit that does not apply is refused") {
  CHECK_THROWS_WITH_AS(edited(yard, {"- d = 4"}), "does not stand in the base: d = 4\n",
                       std::runtime_error);
  CHECK_THROWS_WITH_AS(edited(yard, {"- a = 1"}), "stands in the base more than once: a = 1\n",
                       std::runtime_error);
  CHECK_THROWS_WITH_AS(edited(yard, {"+ d = 4"}), "says not where in the base: d = 4\n",
                       std::runtime_error);
  CHECK_THROWS_WITH_AS(edited(yard, {"  c = 3"}), "changes nothing: c = 3\n", std::runtime_error);
  CHECK_THROWS_WITH_AS(edited(yard, {"c = 3"}),
                       "a line begins with \"+ \", \"- \" or two spaces: c = 3",
                       std::runtime_error);
  CHECK_THROWS_AS(edited("a = 1", {"- a = 1"}), std::runtime_error);
  CHECK_THROWS_WITH_AS(case_input({"one.toml", "no_yard", {}, ""}, "/nowhere"),
                       "there is no such base: no_yard", std::runtime_error);
}

TEST_CASE("a table is read, written back to the byte, and names no case twice") {
  const CaseTable read = parse_cases(two_cases);
  REQUIRE(read.cases.size() == 2);
  CHECK(read.cases[0].base == "yard");
  CHECK(read.cases[0].edit == std::vector<std::string>{"  b = 2", "+ b = 3"});
  CHECK(read.cases[0].message == "one.toml:3:1: twice\n");
  CHECK(read.cases[1].base.empty());
  CHECK(read.cases[1].message == "two.toml: no\n\n  do this\n");
  CHECK(case_table_text(read) == two_cases);
  CHECK_THROWS_WITH_AS(parse_cases(two_cases + "\n== one.toml\n+ x\n=>\nm\n"),
                       "stands twice: one.toml", std::runtime_error);
  CHECK_THROWS_AS(parse_cases("== one.toml\n+ x\n"), std::runtime_error);
  CHECK_THROWS_AS(parse_cases("== one.toml\n=>\nm\n== two.toml\n=>\nm\n"), std::runtime_error);
}

TEST_CASE("whatever stands in the folder is tried") {
  namespace fs = std::filesystem;
  const std::set<std::string> tried{".toml", ".journal",  ".practice",
                                    ".book", ".forecast", ".line"};
  std::set<std::string> inputs;
  std::set<std::string> messages;
  for (const auto& entry :
       fs::directory_iterator(fs::path(SLABTIDE_SOURCE_DIR) / "tests/bad_input")) {
    const fs::path& path = entry.path();
    const std::string ending = path.extension().string();
    if (tried.contains(ending)) inputs.insert(path.stem().string());
    if (ending == ".txt" && path.stem() != "CMakeLists") messages.insert(path.stem().string());
    if (ending != ".cases") continue;
    for (const Case& one : parse_cases(read_text(path)).cases) {
      CHECK_MESSAGE(tried.contains(fs::path(one.name).extension().string()), one.name);
    }
  }
  CHECK(inputs == messages);
}

}  // namespace slabtide::test
