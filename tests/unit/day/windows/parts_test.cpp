#include <algorithm>
#include <cmath>
#include <utility>

#include <doctest/doctest.h>

#include "day/windows/parts.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

constexpr double minute_s = 60.0;
/// A walkway of 42 ft whose thirds fall between cells.
constexpr double length_m = 21.0 * cell_size_m;
constexpr double third_m = 7.0 * cell_size_m;

/// The cells of a zone with ready times given by a rule.
template <class Rule>
std::vector<std::optional<double>> ready_by(const ZoneRun& run, Rule rule) {
  std::vector<std::optional<double>> ready;
  for (const CellRun& cell : run.cells) ready.push_back(rule(cell.cell));
  return ready;
}

ZoneRun cells_of(const Zone& zone) {
  ZoneRun run;
  for (const Cell& cell : cut_into_cells(zone)) run.cells.push_back({cell, 0, 0, 0, 0.0});
  return run;
}

}  // namespace

TEST_CASE("a zone that is ready together is not split") {
  const Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 6, 6))});
  const ZoneRun run = cells_of(job.zones[0]);
  const auto ready = ready_by(run, [](const Cell& cell) { return cell.centre.x_m * minute_s; });
  CHECK(split_into_parts(job, job.zones[0], run, ready, 20 * minute_s).empty());
}

TEST_CASE("a sunny east half is a part of its own, and comes first") {
  const Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 6, 6))});
  const ZoneRun run = cells_of(job.zones[0]);
  const auto ready = ready_by(
      run, [](const Cell& cell) { return (cell.centre.x_m > 3.0 ? 60.0 : 130.0) * minute_s; });
  const auto parts = split_into_parts(job, job.zones[0], run, ready, 20 * minute_s);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].name == "east side");
  CHECK(parts[1].name == "west side");
  CHECK(parts[0].id == "west-2-of-2");
  CHECK(parts[1].id == "west-1-of-2");
  CHECK(parts[0].cells.size() + parts[1].cells.size() == run.cells.size());
  for (const std::size_t i : parts[0].cells) CHECK(run.cells[i].cell.centre.x_m > 3.0);
}

TEST_CASE("of cuttings that are as good the one is taken that the concrete sees, not the compass") {
  // Five cells in a row, each ready an hour after the one before: cut after the second or the
  // third, as much is told. Turned or in a mirror, the strip goes in the same parts.
  const double length = 5.0 * cell_size_m;
  const std::vector<Outline> strips{
      test::rectangle(0, 0, length, cell_size_m),
      {{length, 0.0}, {0.0, 0.0}, {0.0, cell_size_m}, {length, cell_size_m}},
      test::rectangle(0, 0, cell_size_m, length),
      {{0.0, length}, {0.0, 0.0}, {cell_size_m, 0.0}, {cell_size_m, length}}};
  for (const Outline& strip : strips) {
    const Job job = test::sample_job({test::zone_named("strip", strip)});
    const ZoneRun run = cells_of(job.zones[0]);
    REQUIRE(run.cells.size() == 5);
    for (const double sense : {1.0, -1.0}) {
      const auto ready = ready_by(run, [sense](const Cell& cell) {
        return (100.0 + sense * 60.0 * (cell.along_m / cell_size_m)) * minute_s;
      });
      // Longer than one hour apart: two parts, not a cell each.
      const auto parts = split_into_parts(job, job.zones[0], run, ready, 140 * minute_s);
      REQUIRE(parts.size() == 2);
      CHECK(parts[0].cells.size() == 3);
    }
  }
}

TEST_CASE("a drawing that lies at 45 degrees goes in the same parts whichever way it is turned") {
  // Ready from corner to corner: cut from west to east or from south to north, as much is told.
  const auto turned = [](Point p, int quarters) {
    for (int i = 0; i < quarters; ++i) p = {-p.y_m, p.x_m};
    return p;
  };
  for (const double skew : {0.0, 1e-7, -1e-7}) {
    const Outline diamond{{0.0, -5.0}, {5.0 + skew, 0.0}, {0.0, 5.0}, {-5.0, 0.0}};
    std::vector<std::vector<std::pair<long, long>>> first_parts;
    for (int quarters = 0; quarters < 4; ++quarters) {
      Outline outline;
      for (const Point& corner : diamond) outline.push_back(turned(corner, quarters));
      const Job job = test::sample_job({test::zone_named("pad", outline)});
      const ZoneRun run = cells_of(job.zones[0]);
      const auto as_drawn = [&](const Cell& cell) { return turned(cell.centre, 4 - quarters); };
      const auto ready = ready_by(run, [&](const Cell& cell) {
        const Point at = as_drawn(cell);
        return (200.0 + 20.0 * (at.x_m + at.y_m)) * minute_s;
      });
      const auto parts = split_into_parts(job, job.zones[0], run, ready, 20 * minute_s);
      REQUIRE(parts.size() > 1);
      std::vector<std::pair<long, long>> cells;
      for (const std::size_t i : parts[0].cells) {
        const Point at = as_drawn(run.cells[i].cell);
        cells.emplace_back(std::lround(at.x_m * 1e3), std::lround(at.y_m * 1e3));
      }
      std::sort(cells.begin(), cells.end());
      first_parts.push_back(cells);
    }
    for (const auto& cells : first_parts) CHECK(cells == first_parts.front());
  }
}

TEST_CASE("the shade of a slanting wall is told by the wall") {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 8, 8))});
  Obstacle wall;
  wall.name = "garage";
  wall.from = {0.0, -4.0};
  wall.to = {12.0, 8.0};
  wall.height_m = 3.0;
  job.obstacles = {wall};
  const ZoneRun run = cells_of(job.zones[0]);
  const auto ready = ready_by(run, [](const Cell& cell) {
    const double from_wall_m = (cell.centre.y_m - cell.centre.x_m + 4.0) / 1.41421356;
    return (from_wall_m > 2.5 ? 60.0 : 130.0) * minute_s;
  });
  const auto parts = split_into_parts(job, job.zones[0], run, ready, 20 * minute_s);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].name == "away from the garage");
  CHECK(parts[1].name == "by the garage");
  CHECK(parts[1].id == "wall1-1-of-2");
}

TEST_CASE("a walk is split along its line and measured from its start") {
  Zone walk = test::zone_named("walk", {});
  walk.path = Walkway{{{0.0, 0.0}, {length_m, 0.0}}, 1.2};
  walk.outline = test::rectangle(0.0, -0.6, length_m, 1.2);
  Job job = test::sample_job({walk});
  const ZoneRun run = cells_of(walk);
  const auto ready = ready_by(run, [](const Cell& cell) {
    return (cell.along_m < third_m         ? 150.0
            : cell.along_m < 2.0 * third_m ? 100.0
                                           : 50.0) *
           minute_s;
  });
  const auto parts = split_into_parts(job, walk, run, ready, 20 * minute_s);
  REQUIRE(parts.size() == 3);
  CHECK(parts[0].name == "far 14 ft");
  CHECK(parts[1].name == "14 to 28 ft");
  CHECK(parts[2].name == "near 14 ft");
  CHECK(parts[0].id == "along-3-of-3");
  job.units = UnitSystem::si;
  CHECK(split_into_parts(job, walk, run, ready, 20 * minute_s)[2].name == "near 4.3 m");
}

TEST_CASE("neighbours closer than the limit are one part") {
  Zone walk = test::zone_named("walk", {});
  walk.path = Walkway{{{0.0, 0.0}, {length_m, 0.0}}, 1.2};
  walk.outline = test::rectangle(0.0, -0.6, length_m, 1.2);
  const Job job = test::sample_job({walk});
  const ZoneRun run = cells_of(walk);
  const auto ready = ready_by(run, [](const Cell& cell) {
    return (cell.along_m < third_m         ? 150.0
            : cell.along_m < 2.0 * third_m ? 140.0
                                           : 50.0) *
           minute_s;
  });
  CHECK(split_into_parts(job, walk, run, ready, 20 * minute_s).size() == 2);
}

}  // namespace slabtide
