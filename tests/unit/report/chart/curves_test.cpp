// The curves, compared with the plan they are drawn from.
#include <cmath>

#include <doctest/doctest.h>

#include "report/chart/risk_chart.h"
#include "report/chart/zone_series.h"
#include "report/page/page_charts.h"
#include "slabtide/day/pour/cell_times.h"
#include "support/page_facts.h"

namespace slabtide {
namespace {

/// Interpolated linearly between a line's points.
double value_on(const ChartLine& line, double at_s) {
  std::vector<double> times;
  std::vector<double> values;
  for (const ChartPoint& point : line.points) {
    times.push_back(point.at_s);
    values.push_back(point.value);
  }
  return value_at(times, values, at_s);
}

TEST_CASE("a zone's line is its middle cell's, its band all its cells'") {
  const test::PageDay day(test::shaded_landing());
  const PlannedPour facts = day.facts();
  const ZoneRun& zone = facts.run.zones[0];
  std::vector<TimedArea> sets;
  std::vector<std::optional<double>> set_s;
  for (const CellRun& cell : zone.cells) {
    const ColumnHistory& history = facts.run.histories[cell.history];
    set_s.push_back(first_reaches(history.time_s, history.resistance_middle_psi, 500.0));
    sets.push_back({set_s.back(), cell.cell.area_m2});
  }
  CHECK(set_s[middle_cell(zone, facts)] == time_of_fraction(sets, 0.5));
  const auto line = zone_line(0, reader_of(&ColumnHistory::surface_c, [](double c) { return c; }),
                              0.0, 20.0 * 3600.0, facts);
  REQUIRE(line.points.size() == line.band.size());
  double widest_k = 0.0;
  for (std::size_t i = 0; i < line.points.size(); ++i) {
    CHECK(line.band[i].first <= line.points[i].value);
    CHECK(line.points[i].value <= line.band[i].second);
    widest_k = std::max(widest_k, line.band[i].second - line.band[i].first);
  }
  // Sun on one side, shade on the other: 10.6 K observed.
  CHECK(widest_k > 5.0);
  CHECK(line.points.front().at_s >=
        seconds_between(facts.run.weather.grid.start, facts.plan.zones[0].placed.start));
}

TEST_CASE("charts begin with the placing, whatever the pour's start says") {
  Job job = test::open_pad();
  const UtcTime start = job.pour.start;
  job.zones[0].placed_at = after_seconds(start, 4.0 * 3600.0);
  const test::PageDay day(job);
  const PlannedPour facts = day.facts();
  REQUIRE(facts.run.weather.grid.start > start);
  CHECK(facts.run.order.first_placed() == *job.zones[0].placed_at);
  job.pour.start = *job.zones[0].placed_at;
  const test::PageDay same(job);
  CHECK(page_charts(facts) == page_charts(same.facts()));
}

TEST_CASE("the pull reaches its limit where the plan says it does") {
  Job job = test::shaded_landing();
  job.zones[0].tied = true;
  std::get<TypedWeather>(job.weather).low_c = 2.0;
  const test::PageDay day(job);
  const PlannedPour facts = day.facts();
  const LineChart chart = risk_chart({0, 1}, {SawKind::early_entry}, facts);
  REQUIRE(chart.lines.size() == 2);
  // The line is that of the zone left uncut, the bar ends where the plan's first cut is due.
  const auto uncut =
      plan_zone(facts.job.zones[0], facts.run.zones[0], facts.job, facts.run, facts.practice);
  REQUIRE(uncut.saws[0].stress_limit);
  const double limit_s = seconds_between(facts.run.weather.grid.start, *uncut.saws[0].stress_limit);
  // The line has a point there, so only rounding to the second remains.
  CHECK(std::abs(value_on(chart.lines[0], limit_s) - facts.practice.saw.cut_by_ratio) < 0.001);
  REQUIRE(!facts.plan.zones[0].saws.empty());
  CHECK(chart.bars[0].to_s ==
        seconds_between(facts.run.weather.grid.start, *facts.plan.zones[0].saws[0].latest));
}

}  // namespace
}  // namespace slabtide
