#include "page_charts.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include <fmt/format.h>

#include "job/geometry/placing_sequence.h"
#include "job/model/wording.h"
#include "report/chart/chart_table.h"
#include "report/chart/line_chart.h"
#include "report/chart/zone_series.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/markup/palette.h"
#include "report/markup/svg.h"
#include "slab/process/setting.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/cell_times.h"

namespace slabtide {

namespace {

/// The curves continue this long after the last final set (ours).
constexpr double after_set_s = 1.5 * seconds_per_hour;
constexpr double longest_s = 30.0 * seconds_per_hour;
/// Space above and below the values, as a fraction of their range.
constexpr double headroom = 0.08;
constexpr double min_resistance_psi = 1.0;
constexpr double max_resistance_psi = 10000.0;

double same(double value) { return value; }

/// How a chart shows a quantity in the user's units.
struct Scale {
  double (*convert)(double);
  std::string unit;
  int decimals;
};

Scale drying_scale(UnitSystem units) {
  if (units == UnitSystem::us) return {lb_ft2_h_from_kg_m2_h, "lb/ft²/h", 2};
  return {same, "kg/m²/h", 2};
}

Scale temperature_scale(UnitSystem units) {
  if (units == UnitSystem::us) return {fahrenheit_from_celsius, "°F", 0};
  return {same, "°C", 0};
}

Scale resistance_scale(UnitSystem units) {
  if (units == UnitSystem::us) return {same, "psi", 0};
  return {mpa_from_psi, "MPa", 2};
}

/// Text filled in from a template file ends with a line break, which is not wanted within a
/// sentence.
std::string in_line(std::string markup) {
  while (markup.ends_with('\n')) markup.pop_back();
  return markup;
}

/// The charts of some of the zones.
class ZoneCharts {
 public:
  ZoneCharts(std::vector<std::size_t> zones, const PlannedPour& facts)
      : zones_(std::move(zones)), facts_(facts) {
    const UtcTime first = facts.run.order.first_placed();
    from_s_ = seconds_between(facts.run.weather.grid.start, first);
    double last_s = from_s_ + seconds_per_hour;
    for (const ZonePlan& zone : facts.plan.zones) {
      const UtcTime end = zone.whole.final_set.value_or(zone.placed.end);
      last_s = std::max(last_s, seconds_between(facts.run.weather.grid.start, end));
    }
    to_s_ = std::min({last_s + after_set_s, from_s_ + longest_s, facts.run.weather.grid.end_s()});
  }

  Element all() const {
    Element group("div");
    group.set("class", "charts");
    return group.add(drying()).add(resistance()).add(surface()).add(body());
  }

 private:
  UnitSystem units() const { return facts_.job.units; }

  LineChart chart_of(const std::string& title, const Reader& reader) const {
    LineChart chart;
    chart.title = title;
    chart.from_s = from_s_;
    chart.to_s = to_s_;
    for (std::size_t i = 0; i < zones_.size(); ++i) {
      chart.lines.push_back(zone_line(zones_[i], reader, from_s_, to_s_, facts_));
      chart.lines.back().style = line_class(i);
    }
    return chart;
  }

  static void fit(LineChart& chart, double low, double high) {
    for (const ChartLine& line : chart.lines) {
      for (const ChartPoint& point : line.points) {
        low = std::min(low, point.value);
        high = std::max(high, point.value);
      }
      for (const auto& [min, largest] : line.band) {
        low = std::min(low, min);
        high = std::max(high, largest);
      }
    }
    chart.low = low;
    chart.high = high + headroom * std::max(high - low, 1e-6);
  }

  static Element figure_of(std::string_view heading, std::string_view unit, const Element& picture,
                           const std::string& caption, const Element& table) {
    Element figure("figure");
    Element title("h3");
    title.text(heading).text(" ").add(Element("small").text(unit));
    figure.add(title).add(picture);
    Element words("figcaption");
    return figure.add(words.add_markup(caption)).add(table);
  }

  Element finished(std::string_view heading, const LineChart& chart, const Scale& scale,
                   const std::string& caption) const {
    return figure_of(heading, scale.unit, render_chart(chart, facts_), caption,
                     chart_table(chart, scale.unit, scale.decimals, facts_));
  }

  Element drying() const {
    const Scale scale = drying_scale(units());
    LineChart chart = chart_of("Evaporation from each zone through the day",
                               reader_of(&ColumnHistory::evaporation_kg_m2_h, scale.convert));
    const EvaporationFlags& flags = facts_.practice.evaporation;
    const bool halved = std::any_of(facts_.run.mixes.begin(), facts_.run.mixes.end(),
                                    [](const MixModel& mix) { return mix.hardly_bleeds; });
    const double factor = halved ? flags.hardly_bleeds_factor : 1.0;
    chart.levels = {{scale.convert(factor * flags.caution_kg_m2_h), "watch the sheen"},
                    {scale.convert(factor * flags.precautions_kg_m2_h), "protect it"}};
    fit(chart, 0.0, chart.levels.back().value);
    return finished("How fast it dries", chart, scale,
                    peak_words("Most while plastic: ", &PartPlan::peak_evaporation_kg_m2_h,
                               &PartPlan::peak_evaporation_at, "peak_evaporation", "_kg_m2_h",
                               evaporation_words));
  }

  Element surface() const {
    const Scale scale = temperature_scale(units());
    LineChart chart = chart_of("Surface temperature of each zone through the day, and the air's",
                               reader_of(&ColumnHistory::surface_c, scale.convert));
    chart.lines.push_back(air(scale));
    fit(chart, chart.lines.back().points.front().value, chart.lines.back().points.front().value);
    return finished("How warm the surface gets", chart, scale,
                    peak_words("Hottest: ", &PartPlan::surface_peak_c, &PartPlan::surface_peak_at,
                               "surface_peak", "_c", temperature_words));
  }

  Element body() const {
    const Scale scale = temperature_scale(units());
    LineChart chart = chart_of("Temperature in the middle of each zone's slab through the day",
                               reader_of(&ColumnHistory::middle_c, scale.convert));
    chart.lines.push_back(air(scale));
    fit(chart, chart.lines.back().points.front().value, chart.lines.back().points.front().value);
    return finished("How warm it is inside", chart, scale, "Halfway down, where set is judged.");
  }

  ChartLine air(const Scale& scale) const {
    ChartLine line;
    line.name = "air";
    line.style = "line-air";
    const SiteWeather& weather = facts_.run.weather;
    for (const double at_s : sample_times_s(from_s_, to_s_)) {
      line.points.push_back({at_s, scale.convert(weather.air_c[weather.grid.index_at(at_s)])});
    }
    return line;
  }

  Element resistance() const {
    const Scale scale = resistance_scale(units());
    LineChart chart = chart_of("Penetration resistance of each zone through the day",
                               reader_of(&ColumnHistory::resistance_work_psi, scale.convert));
    chart.kind = AxisScale::Kind::logarithmic;
    chart.low = scale.convert(min_resistance_psi);
    chart.high = scale.convert(max_resistance_psi);
    chart.levels = {{scale.convert(initial_set_psi), "initial set"},
                    {scale.convert(final_set_psi), "final set"}};
    std::string limits;
    for (std::size_t i = 0; i < zones_.size(); ++i) {
      const Operation main = main_operation(facts_.job.zones[zones_[i]].finish);
      chart.lines[i].thick_s = window_of_middle(zones_[i], main);
      add_range(chart, main, scale, limits);
    }
    for (ChartLine& line : chart.lines) hold(line, chart.low, chart.high);
    return finished("How stiff it is", chart, scale,
                    fmt::format("At the depth the tools work in (ASTM C403). Thick line: while it "
                                "can take its finish ({}).",
                                limits));
  }

  /// Cuts off a line where it leaves the chart.
  static void hold(ChartLine& line, double low, double high) {
    const auto above = [&](const ChartPoint& point) { return point.value > high; };
    const auto first = std::find_if(line.points.begin(), line.points.end(), above);
    const auto kept = static_cast<std::size_t>(first - line.points.begin()) +
                      (first == line.points.end() ? 0 : 1);
    line.points.resize(kept);
    line.band.resize(kept);
    const auto below = [&](const ChartPoint& point) { return point.value < low; };
    const auto start = std::find_if_not(line.points.begin(), line.points.end(), below);
    line.band.erase(line.band.begin(), line.band.begin() + (start - line.points.begin()));
    line.points.erase(line.points.begin(), start);
  }

  std::optional<std::pair<double, double>> window_of_middle(std::size_t zone,
                                                            Operation operation) const {
    const ZoneRun& run = facts_.run.zones[zone];
    const CellRun& cell = run.cells[middle_cell(run, facts_)];
    const CellWindow window = cell_window(facts_.run.histories[cell.history],
                                          facts_.practice.window(operation), facts_.practice);
    if (!window.opens_s || !window.closes_s) return std::nullopt;
    return std::pair(*window.opens_s, *window.closes_s);
  }

  void add_range(LineChart& chart, Operation operation, const Scale& scale,
                 std::string& limits) const {
    const std::string words(operation_words(operation));
    for (const ChartRange& range : chart.ranges) {
      if (range.words == words) return;
    }
    const ResistanceWindow& window = facts_.practice.window(operation);
    const double low = scale.convert(window.opens_psi);
    const double high = scale.convert(window.closes_psi);
    chart.ranges.push_back({low, high, words});
    limits += fmt::format("{}{} {} to {} {}", limits.empty() ? "" : ", ", words,
                          short_number(low, scale.decimals), short_number(high, scale.decimals),
                          scale.unit);
  }

  /// "Most: pad 0.10 lb/ft²/h at 12:05", for the zone with the highest value.
  std::string peak_words(const std::string& lead, double PartPlan::*value, UtcTime PartPlan::*at,
                         const std::string& key, const std::string& unit_key,
                         std::string (*words)(double, UnitSystem)) const {
    std::size_t max = zones_.front();
    for (const std::size_t zone : zones_) {
      if (facts_.plan.zones[zone].whole.*value > facts_.plan.zones[max].whole.*value) max = zone;
    }
    const PartPlan& part = facts_.plan.zones[max].whole;
    const std::string json = pointer("/zones", max, key);
    return fmt::format(
        "{}{}, {} at {}.", lead, escape_markup(facts_.job.zones[max].name),
        in_line(page_figure(json + unit_key, part.*value, words(part.*value, units()))),
        in_line(page_time(json + "_at", part.*at, facts_.job)));
  }

  std::vector<std::size_t> zones_;
  const PlannedPour& facts_;
  double from_s_ = 0.0;
  double to_s_ = 0.0;
};

std::string group_words(const std::vector<std::size_t>& zones, const Job& job) {
  return fmt::format("{} to {}", job.zones[zones.front()].name, job.zones[zones.back()].name);
}

}  // namespace

std::string page_charts(const PlannedPour& facts) {
  Element section("section");
  section.set("class", "figures").set("id", "curves").set("aria-labelledby", "curves-title");
  section.add(Element("h2").set("id", "curves-title").text("Through the day"));
  section.add(
      Element("p").set("class", "about").text("Line: the middle of the zone. Shading: its range."));
  const std::vector<std::size_t> order = zones_in_order(facts.job);
  for (std::size_t first = 0; first < order.size(); first += line_class_count) {
    const std::size_t last = std::min(first + line_class_count, order.size());
    const std::vector<std::size_t> zones(order.begin() + static_cast<std::ptrdiff_t>(first),
                                         order.begin() + static_cast<std::ptrdiff_t>(last));
    Element details("details");
    if (first == 0) details.set("class", "fold");
    const bool all_in_one = order.size() <= line_class_count;
    details.add(Element("summary").text(all_in_one ? "Drying, stiffness, temperature"
                                                   : group_words(zones, facts.job)));
    section.add(details.add(ZoneCharts(zones, facts).all()));
  }
  return section.str();
}

}  // namespace slabtide
