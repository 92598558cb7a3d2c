// Cells as drawn: their shapes, and the field that contour lines are computed from.
#include <cmath>
#include <stdexcept>

#include <doctest/doctest.h>

#include "job/geometry/zone_geometry.h"
#include "report/map/cell_field.h"
#include "report/map/cell_shapes.h"
#include "report/map/plan_view.h"
#include "slabtide/job/geometry/cells.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

ZoneRun run_of(const Zone& zone) {
  ZoneRun run;
  for (const Cell& cell : cut_into_cells(zone)) {
    CellRun one;
    one.cell = cell;
    run.cells.push_back(one);
  }
  return run;
}

TEST_CASE("the shapes of a rectangle's cells are the cells") {
  const Zone zone = test::zone_named("pad", test::rectangle(1.0, 2.0, 4.2, 3.6));
  const ZoneRun run = run_of(zone);
  const auto shapes = cell_shapes(run);
  REQUIRE(shapes.size() == run.cells.size());
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    CAPTURE(i);
    // Seen: within 6e-15 m2.
    CHECK(shared_area_m2(zone.outline, counter_clockwise(shapes[i])) ==
          doctest::Approx(run.cells[i].cell.area_m2).epsilon(1e-12));
  }
}

TEST_CASE("border and field are drawn apart, each filling its ground") {
  Zone zone = test::zone_named("pad", test::rectangle(0.0, 0.0, 4.2, 3.6));
  zone.border = Border{0.3, Finish::broom};
  const ZoneRun run = run_of(zone);
  const auto shapes = cell_shapes(run);
  const Outline field = inset(zone.outline, 0.3).front();
  double inside_m2 = 0.0;
  double strip_m2 = 0.0;
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    const Outline shape = counter_clockwise(shapes[i]);
    if (run.cells[i].cell.border) {
      strip_m2 += shared_area_m2(zone.outline, shape) - shared_area_m2(field, shape);
    } else {
      inside_m2 += shared_area_m2(field, shape);
    }
  }
  CHECK(inside_m2 == doctest::Approx(area_m2(field)).epsilon(1e-9));
  // A strip cell does not extend beyond its search distance; observed: nothing is left out.
  CHECK(strip_m2 == doctest::Approx(area_m2(zone.outline) - area_m2(field)).epsilon(1e-9));
}

TEST_CASE("a slope over the cells stays that slope, up to the edge") {
  const Zone zone = test::zone_named("pad", test::rectangle(0.0, 0.0, 4.2, 3.6));
  std::vector<Point> centres;
  std::vector<std::optional<double>> values;
  for (const Cell& cell : cut_into_cells(zone)) {
    centres.push_back(cell.centre);
    values.emplace_back(100.0 + 7.0 * cell.centre.x_m - 3.0 * cell.centre.y_m);
  }
  const CellField field(centres, zone.outline);
  const Lattice lattice = field.lattice(values);
  int nodes = 0;
  for (std::size_t row = 0; row < lattice.rows; ++row) {
    for (std::size_t column = 0; column < lattice.columns; ++column) {
      const auto& value = lattice.value(column, row);
      if (!value) continue;
      ++nodes;
      const Point p = lattice.node(column, row);
      // The regularisation for single rows reduces values slightly: 0.0041 of values near 100 was
      // observed.
      CHECK(std::abs(*value - (100.0 + 7.0 * p.x_m - 3.0 * p.y_m)) < 0.005);
    }
  }
  CHECK(nodes > 150);
  CHECK_THROWS_AS(field.lattice({1.0}), std::invalid_argument);
  CHECK_THROWS_AS(CellField({}, zone.outline), std::invalid_argument);
}

TEST_CASE("about a cell without a value there is none") {
  const Zone zone = test::zone_named("pad", test::rectangle(0.0, 0.0, 6.0, 1.2));
  std::vector<Point> centres;
  std::vector<std::optional<double>> values;
  for (const Cell& cell : cut_into_cells(zone)) {
    centres.push_back(cell.centre);
    values.push_back(cell.centre.x_m > 3.0 ? std::nullopt : std::optional(1.0));
  }
  const Lattice lattice = CellField(centres, zone.outline).lattice(values);
  for (std::size_t row = 0; row < lattice.rows; ++row) {
    for (std::size_t column = 0; column < lattice.columns; ++column) {
      if (lattice.node(column, row).x_m > 3.0) CHECK_FALSE(lattice.value(column, row));
    }
  }
  CHECK(lattice.value(2, 2));
}

TEST_CASE("the plan is to scale, north up, with the walls near by") {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(2.0, 3.0, 8.0, 4.0))});
  job.obstacles.push_back({"", ObstacleKind::wall, {0.0, 0.0}, {0.0, 9.0}, 0.0, 3.0, 0.0});
  const PlanView view(job);
  CHECK(view.width() == 1000.0);
  const double across = view.x(10.0) - view.x(2.0);
  CHECK(std::abs(across / 8.0 - view.units_per_m()) < 1.0 / 8.0);
  // Whole units: a metre has the same length in both directions to within one unit.
  CHECK(std::abs((view.y(3.0) - view.y(7.0)) / 4.0 - across / 8.0) < 0.5);
  CHECK(view.y(7.0) < view.y(3.0));
  CHECK(view.x(0.0) > 0.0);
  CHECK(view.y(9.0) >= 0.0);
  CHECK(view.ring(test::rectangle(2.0, 3.0, 8.0, 4.0)).front() == 'M');
}

TEST_CASE("a tall site is drawn no taller than wide, in the middle") {
  const Job job =
      test::sample_job({test::zone_named("walk", test::rectangle(0.0, 0.0, 1.2, 40.0))});
  const PlanView view(job);
  CHECK(view.plan_height() <= 1000.0);
  CHECK(std::abs(view.x(0.6) - 500.0) <= 1.0);
}

}  // namespace
}  // namespace slabtide
