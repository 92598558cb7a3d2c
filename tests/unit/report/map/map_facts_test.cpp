// What the maps show, compared with the plan they are drawn from.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include <doctest/doctest.h>

#include "report/map/map_choices.h"
#include "report/map/map_hour.h"
#include "report/map/working_way.h"
#include "slabtide/day/pour/cell_times.h"
#include "support/page_facts.h"
#include "weather/sky/shade.h"

namespace slabtide {
namespace {

const MapChoice& choice_named(const std::vector<MapChoice>& choices, const std::string& id) {
  for (const MapChoice& choice : choices) {
    if (choice.id == id) return choice;
  }
  throw std::invalid_argument("no choice " + id);
}

TEST_CASE("the choices are the finish, then the job's operations, then the saws on hand") {
  const test::PageDay day(test::shaded_landing());
  std::vector<std::string> ids;
  for (const MapChoice& choice : map_choices(day.facts())) ids.push_back(choice.id);
  CHECK(ids == std::vector<std::string>{"finish", "first_edge", "release", "stamp", "broom",
                                        "detail_edge", "tooled_joint", "saw_dry"});
}

TEST_CASE("the cells' times add up to the plan's windows") {
  const test::PageDay day(test::shaded_landing());
  const PlannedPour facts = day.facts();
  const auto choices = map_choices(facts);
  const MapChoice& stamp = choice_named(choices, "stamp");
  std::vector<TimedArea> opens;
  for (std::size_t i = 0; i < stamp.zones[0].size(); ++i) {
    const Cell& cell = facts.run.zones[0].cells[i].cell;
    CHECK(stamp.zones[0][i].works == !cell.border);
    if (!cell.border) opens.push_back({stamp.zones[0][i].opens_s, cell.area_m2});
  }
  const auto first_s = time_of_fraction(opens, facts.practice.cells.first_fraction);
  const auto* window = facts.plan.zones[0].whole.window(Operation::stamp);
  REQUIRE(first_s);
  REQUIRE(window != nullptr);
  CHECK(facts.run.at(*first_s) == *window->opens);
  // The border has its own finish, the other zone too.
  const MapChoice& finish = choice_named(choices, "finish");
  CHECK(operation_on(finish, Finish::broom) == Operation::broom);
  CHECK_FALSE(operation_on(stamp, Finish::broom));
  for (const MapCell& cell : finish.zones[1]) CHECK(cell.opens_s);
}

TEST_CASE("the way leads from what is ready first to what is ready last") {
  const test::PageDay day(test::shaded_landing());
  const PlannedPour facts = day.facts();
  const auto choices = map_choices(facts);
  const auto& cells = choice_named(choices, "stamp").zones[0];
  const auto way = working_way(facts.job.zones[0], facts.plan.zones[0], facts.run.zones[0], cells);
  REQUIRE(way.size() >= 2);
  // The wall is on the east side, so the sun reaches the west first.
  CHECK(way.front().x_m < way.back().x_m);
  const auto opens_at = [&](Point p) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (facts.run.zones[0].cells[i].cell.centre == p) return *cells[i].opens_s;
    }
    throw std::invalid_argument("the way stops beside a cell");
  };
  CHECK(opens_at(way.front()) < opens_at(way.back()));
}

TEST_CASE("there is no way where all is ready at once") {
  const test::PageDay day(test::open_pad());
  const PlannedPour facts = day.facts();
  const auto choices = map_choices(facts);
  CHECK(working_way(facts.job.zones[0], facts.plan.zones[0], facts.run.zones[0],
                    choices.front().zones[0])
            .empty());
}

TEST_CASE("a shadow ends where the shade does") {
  // Compared with the exposure's own geometry: the wall's shade ends within a millimetre of where
  // the drawn shadow does.
  const Obstacle wall{"", ObstacleKind::wall, {-50.0, 0.0}, {50.0, 0.0}, 0.0, 4.0, 0.0};
  for (const double azimuth : {100.0, 150.0, 180.0, 230.0}) {
    for (const double elevation : {8.0, 35.0, 60.0}) {
      CAPTURE(azimuth);
      CAPTURE(elevation);
      const Point end = shadow_per_m(azimuth, elevation);
      const Point tip{4.0 * end.x_m, 4.0 * end.y_m};
      const auto lit = [&](double fraction) {
        return Surroundings({tip.x_m * fraction, tip.y_m * fraction}, {wall})
            .sunlit_fraction({azimuth, elevation});
      };
      CHECK(lit(0.9995) == 0.0);
      CHECK(lit(1.0005) == 1.0);
    }
  }
  CHECK_THROWS_AS(shadow_per_m(180.0, 0.0), std::invalid_argument);
}

TEST_CASE("the slider's hours are local quarters over all that is shown") {
  const test::PageDay day(test::shaded_landing());
  const PlannedPour facts = day.facts();
  const auto choices = map_choices(facts);
  const QuarterHours hours = quarter_hours(choices, facts);
  CHECK(facts.run.at(hours.start_s) == facts.job.pour.start);
  double last_s = 0.0;
  for (const MapChoice& choice : choices) {
    for (const auto& zone : choice.zones) {
      for (const MapCell& cell : zone) last_s = std::max(last_s, cell.closes_s.value_or(0.0));
    }
  }
  CHECK(hours.at_s(hours.count - 1) >= last_s);
  CHECK(hours.at_s(hours.count - 2) < last_s);
}

TEST_CASE("the share in the sun is the cells' own, by area") {
  Job job = test::shaded_landing();
  job.obstacles.pop_back();  // the tree lets some light through
  const test::PageDay day(job);
  const PlannedPour facts = day.facts();
  const ZoneRun& zone = facts.run.zones[0];
  bool partly = false;
  for (double at_s = 0.0; at_s < 12.0 * 3600.0; at_s += 900.0) {
    const double fraction = sunlit_area_fraction(zone, facts.run, at_s);
    double lit_m2 = 0.0;
    double all_m2 = 0.0;
    const auto step = static_cast<std::size_t>(std::lround(at_s / facts.run.weather.grid.step_s));
    for (const CellRun& cell : zone.cells) {
      const bool lit = facts.run.exposures[cell.exposure].sunlit_fraction[step] > 0.5;
      lit_m2 += lit ? cell.cell.area_m2 : 0.0;
      all_m2 += cell.cell.area_m2;
    }
    CHECK(fraction == doctest::Approx(lit_m2 / all_m2).epsilon(1e-9));
    partly = partly || (fraction > 0.1 && fraction < 0.9);
  }
  CHECK(partly);
}

TEST_CASE("times for the script, a cell an entry") {
  MapChoice choice;
  choice.zones = {{{true, 3600.0, 7200.0}, {false, {}, {}}, {true, {}, {}}}, {{true, 4500.0, {}}}};
  CHECK(times_for_script(choice, {900.0, 10}) == "45 105,,-,60");
  choice.zones = {{{false, {}, {}}}, {{true, 900.0, {}}}};
  CHECK(times_for_script(choice, {900.0, 10}) == ",0");
}

}  // namespace
}  // namespace slabtide
