#include "chart_table.h"

#include <cmath>

#include <fmt/format.h>

#include "report/markup/table_markup.h"
#include "report/words/decimals.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// A sample this close to an hour is used for that hour.
constexpr double near_s = 301.0;

/// None where the line has left the chart: its last point only leads out of it.
const ChartPoint* point_at(const ChartLine& line, double high, double at_s) {
  for (const ChartPoint& point : line.points) {
    if (std::abs(point.at_s - at_s) < near_s) return point.value > high ? nullptr : &point;
  }
  return nullptr;
}

Element head_of(const LineChart& chart) {
  std::vector<std::string> names{"hour"};
  for (const ChartLine& line : chart.lines) names.push_back(line.name);
  return table_head(names);
}

Element row_at(const LineChart& chart, double at_s, int decimals, const PlannedPour& facts) {
  Element row("tr");
  row.add(row_head(day_clock(facts.run.at(at_s), facts.job)));
  for (const ChartLine& line : chart.lines) {
    const ChartPoint* point = point_at(line, chart.high, at_s);
    Element cell("td");
    cell.set("class", "number");
    row.add(cell.text(point == nullptr ? "–" : fixed_words(point->value, decimals)));
  }
  return row;
}

}  // namespace

Element chart_table(const LineChart& chart, std::string_view unit, int decimals,
                    const PlannedPour& facts) {
  const double clock_s =
      static_cast<double>(facts.job.site.time_zone.local_from_utc(facts.run.weather.grid.start)
                              .time_of_day()
                              .total_seconds());
  Element body("tbody");
  const auto hour_of = [&](double at_s) { return (at_s + clock_s) / seconds_per_hour; };
  const long last = std::lround(std::floor(hour_of(chart.to_s)));
  for (long hour = std::lround(std::ceil(hour_of(chart.from_s))); hour <= last; ++hour) {
    body.add(
        row_at(chart, static_cast<double>(hour) * seconds_per_hour - clock_s, decimals, facts));
  }
  Element table("table");
  table.add(head_of(chart)).add(body);
  Element scroll("div");
  scroll.set("class", "scroller").set("tabindex", "0").set("role", "group");
  scroll.set("aria-label", chart.title).add(table);
  Element details("details");
  details.add(Element("summary").text(fmt::format("Hour by hour, {}", unit)));
  return details.add(scroll);
}

}  // namespace slabtide
