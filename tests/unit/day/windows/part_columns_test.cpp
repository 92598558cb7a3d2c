#include "day/windows/part_columns.h"

#include <numeric>

#include <doctest/doctest.h>

namespace slabtide {

namespace {

/// So many cells in columns handed out in turn, cell i of i + 1 m2.
ZoneRun cells_in_turn(std::size_t cells, std::size_t columns) {
  ZoneRun zone;
  zone.cells.resize(cells);
  for (std::size_t i = 0; i < cells; ++i) {
    zone.cells[i].history = (i + 1) % columns;
    zone.cells[i].cell.area_m2 = static_cast<double>(i + 1);
  }
  return zone;
}

}  // namespace

TEST_CASE("each column of a part is there once, with the area of its cells") {
  const ZoneRun zone = cells_in_turn(7, 3);
  // Cells 1, 2, 4 and 5 ask for columns 2, 0, 2 and 0; by hand 2 + 5 and 3 + 6 m2.
  const auto columns = columns_of(zone, {1, 2, 4, 5});
  REQUIRE(columns.size() == 2);
  CHECK(columns[0].history == 2);
  CHECK(columns[0].area_m2 == 7.0);
  CHECK(columns[1].history == 0);
  CHECK(columns[1].area_m2 == 9.0);
  CHECK(columns_of(zone, {}).empty());
}

TEST_CASE("what is looked at in a part grows with its columns, not with its cells") {
  for (const std::size_t cells : {100U, 1000U, 10000U}) {
    std::vector<std::size_t> all(cells);
    std::iota(all.begin(), all.end(), std::size_t{0});
    CHECK(columns_of(cells_in_turn(cells, 60), all).size() == 60);
  }
}

TEST_CASE("a part that set on the way is too stiff as it is placed, whatever it bled") {
  PourRun run;
  run.histories.resize(2);
  run.histories[0].resistance_work_psi = {0.5, 80.0, 900.0};
  run.histories[1].resistance_work_psi = {700.0, 800.0, 900.0};
  const ResistanceWindow window{40.0, 600.0, true};
  CellRules rules;
  rules.first_fraction = 0.1;
  CHECK_FALSE(stiff_when_placed({{0, 5.0}}, run, window, rules));
  CHECK(stiff_when_placed({{1, 5.0}}, run, window, rules));
  CHECK(stiff_when_placed({{0, 9.0}, {1, 1.0}}, run, window, rules));  // a tenth of it
  CHECK_FALSE(stiff_when_placed({{0, 9.5}, {1, 0.5}}, run, window, rules));
  CHECK_FALSE(stiff_when_placed({}, run, window, rules));
}

}  // namespace slabtide
