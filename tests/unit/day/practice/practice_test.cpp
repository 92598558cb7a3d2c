#include <doctest/doctest.h>

#include "slabtide/core/embedded.h"
#include "slabtide/day/practice/practice.h"
#include "unit/day/practice/practice_fault.h"

namespace slabtide {

TEST_CASE("the practice inside the program reads whole") {
  const Practice practice = default_practice();
  CHECK(practice.window(Operation::stamp).opens_psi == 40.0);
  CHECK(practice.window(Operation::stamp).closes_psi == 300.0);
  CHECK(practice.window(Operation::stamp).needs_sheen_gone);
  CHECK(!practice.window(Operation::strip).needs_sheen_gone);
}

TEST_CASE("a file that still says what set is, is read, and told that it is fixed") {
  const auto reading =
      read_practice("[set]\ninitial_set_psi = 400\ndry_after_wash_h = 5\n", default_practice());
  REQUIRE(reading.ok());
  CHECK(reading.value->set.dry_after_wash_h == 5.0);
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics[0].severity == Severity::warning);
  CHECK(reading.diagnostics[0].message ==
        "initial set is 500 psi and final set 4000 by definition (ASTM C403): not read");
}

TEST_CASE("what the user gives replaces that and nothing else") {
  const auto reading = read_practice("[operation.stamp]\nopens_psi = 55\n", default_practice());
  REQUIRE(reading.ok());
  CHECK(reading.value->window(Operation::stamp).opens_psi == 55.0);
  CHECK(reading.value->window(Operation::stamp).closes_psi == 300.0);
  CHECK(reading.value->window(Operation::texture).opens_psi == 30.0);
}

TEST_CASE("what cannot be is refused where it stands") {
  CHECK(test::practice_fault("[operation.stmp]\nopens_psi = 55\n") ==
        "mine.toml:2:1: operation.stmp.opens_psi: unknown entry\n"
        "    opens_psi = 55\n"
        "    ^\n"
        "  did you mean operation.stamp.opens_psi?\n");
  CHECK(test::practice_fault("[saw]\ncut_by_ratio = \"half\"\n") ==
        "mine.toml:2:16: saw.cut_by_ratio: got \"half\", expected a number from 0.01 to 1\n"
        "    cut_by_ratio = \"half\"\n"
        "                   ^\n");
  CHECK(test::practice_fault("[absorptance]\ngrey = nan\n") ==
        "mine.toml:2:8: absorptance.grey: got nan, expected a number from 0 to 1\n"
        "    grey = nan\n"
        "           ^\n");
  CHECK(test::practice_fault("[operation.stamp]\nneeds_sheen_gone = 1\n") ==
        "mine.toml:2:20: operation.stamp.needs_sheen_gone: got 1, expected true or false\n"
        "    needs_sheen_gone = 1\n"
        "                       ^\n");
  CHECK(test::practice_fault("[saw\n").find("mine.toml:1:") == 0);
}

TEST_CASE("limits out of order are refused, with both places") {
  CHECK(test::practice_fault("[operation.broom]\ncloses_psi = 90\nopens_psi = 100\n") ==
        "mine.toml:3:13: operation.broom.opens_psi: got 100, expected less than 90 "
        "(operation.broom.closes_psi)\n"
        "    opens_psi = 100\n"
        "                ^\n"
        "  also here: mine.toml:2\n");
}

TEST_CASE("every number in the practice file says where it comes from") {
  // Each line that sets a number outside [operation.*] ends in a comment, whose table or
  // line names a source or a status.
  std::string_view rest = embedded::practice_toml();
  bool in_operation = false;
  int numbers = 0;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('\n'), rest.size() - 1);
    const std::string_view line = rest.substr(0, end);
    rest.remove_prefix(end + 1);
    if (line.starts_with("[")) in_operation = line.starts_with("[operation.");
    const bool sets_number = line.find(" = ") != std::string_view::npos && !line.starts_with("#");
    if (!sets_number || in_operation) continue;
    ++numbers;
    INFO(line);
    CHECK(line.find('#') != std::string_view::npos);
  }
  CHECK(numbers > 40);
}

}  // namespace slabtide
