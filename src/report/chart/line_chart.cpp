#include "line_chart.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/text.h"
#include "report/markup/label_places.h"
#include "report/words/decimals.h"
#include "report/words/short_names.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

// Dimensions of the drawing, in its own units (ours).
constexpr double width = 486.0;
constexpr double plot_height = 250.0;
constexpr double left = 68.0;
constexpr double right_margin = 124.0;
constexpr double top = 14.0;
constexpr double foot = 38.0;
constexpr double bar_row = 26.0;
constexpr double type_size = 19.0;  ///< on the smallest screen: 12 px there
constexpr std::size_t max_name_columns = 10;
constexpr std::size_t max_value_ticks = 6;
constexpr double max_hour_labels = 4.5;
constexpr double bracket_step = 9.0;
constexpr double min_band = 3.0;

const std::vector<double> hour_steps{1, 2, 3, 4, 6, 12};

Element text_at(double x, double y, std::string_view words, std::string_view kind) {
  Element text("text");
  return text.set("class", kind).set("x", x).set("y", y).text(words);
}

Element path_of(const std::string& data, std::string_view kind) {
  Element path("path");
  return path.set("class", kind).set("d", data);
}

class Drawing {
 public:
  Drawing(const LineChart& chart, const PlannedPour& facts)
      : chart_(chart),
        facts_(facts),
        x_(AxisScale::Kind::straight, chart.from_s, chart.to_s, left, width - right_margin),
        y_(chart.kind, chart.low, chart.high, top + plot_height, top) {}

  Element svg() const {
    Element svg("svg");
    svg.set("class", "chart").set("role", "img").set("aria-label", chart_.title);
    svg.set("viewBox", fmt::format("0 0 {} {}", width, short_number(height())));
    svg.add(nights()).add(values()).add(hours()).add(levels());
    for (const ChartLine& line : chart_.lines) svg.add(band(line));
    for (const ChartLine& line : chart_.lines) svg.add(drawn(line));
    return svg.add(names()).add(ranges()).add(bars());
  }

 private:
  double bottom() const { return top + plot_height; }
  double right() const { return width - right_margin; }
  double bars_height() const { return bar_row * static_cast<double>(chart_.bars.size()); }
  double height() const { return bottom() + foot + bars_height(); }

  Element nights() const {
    Element group("g");
    const SiteWeather& weather = facts_.run.weather;
    const auto is_night = [&](std::size_t k) { return weather.sun_elevation_deg[k] < 0.0; };
    std::size_t k = 0;
    while (k < weather.grid.count) {
      const std::size_t from = k;
      while (k < weather.grid.count && is_night(k) == is_night(from)) ++k;
      if (is_night(from)) add_night(group, from, k);
    }
    return group;
  }

  void add_night(Element& group, std::size_t from, std::size_t to) const {
    const double step_s = facts_.run.weather.grid.step_s;
    const double x1 = x_.place(step_s * static_cast<double>(from));
    const double x2 = x_.place(step_s * static_cast<double>(to));
    if (!(x2 > x1)) return;
    Element rect("rect");
    rect.set("class", "chart-night").set("x", x1).set("y", top).set("width", x2 - x1);
    group.add(rect.set("height", plot_height + bars_height()));
  }

  Element values() const {
    const bool straight = chart_.kind == AxisScale::Kind::straight;
    const auto ticks = straight ? round_ticks(chart_.low, chart_.high, max_value_ticks)
                                : decade_ticks(chart_.low, chart_.high);
    Element group("g");
    group.set("class", "values");
    for (const double tick : ticks) {
      const double y = y_.place(tick);
      group.add(path_of(PathData().move_to(left, y).line_to(right(), y).str(), "grid"));
      // On a linear axis all ticks have the same number of decimals; decades have as many as each
      // needs.
      const int decimals = decimals_of(straight ? ticks : std::vector{tick});
      group.add(text_at(left - 7.0, y, fixed_words(tick, decimals), "value"));
    }
    return group;
  }

  /// Full local hours, spaced so that their names fit.
  Element hours() const {
    const auto local =
        facts_.job.site.time_zone.local_from_utc(facts_.run.weather.grid.start).time_of_day();
    const double clock_h = static_cast<double>(local.total_seconds()) / seconds_per_hour;
    const double span_h = (chart_.to_s - chart_.from_s) / seconds_per_hour;
    const auto few = [&](double one) { return span_h / one <= max_hour_labels; };
    const auto found = std::find_if(hour_steps.begin(), hour_steps.end(), few);
    const double step = found == hour_steps.end() ? hour_steps.back() : *found;
    Element group("g");
    group.set("class", "hours");
    const auto step_of = [&](double at_s) { return (at_s / seconds_per_hour + clock_h) / step; };
    const long last = std::lround(std::floor(step_of(chart_.to_s)));
    for (long k = std::lround(std::ceil(step_of(chart_.from_s))); k <= last; ++k) {
      add_hour(group, (static_cast<double>(k) * step - clock_h) * seconds_per_hour);
    }
    return group;
  }

  void add_hour(Element& group, double at_s) const {
    const double x = x_.place(at_s);
    const double below = bottom() + bars_height();
    group.add(path_of(PathData().move_to(x, top).line_to(x, below + 5.0).str(), "grid"));
    const std::string clock = clock_of(facts_.job).hour(facts_.run.at(at_s));
    group.add(text_at(x, below + 20.0, clock, "chart-hour"));
  }

  Element levels() const {
    Element group("g");
    group.set("class", "levels");
    for (const ChartLevel& level : chart_.levels) {
      const double y = y_.place(level.value);
      group.add(path_of(PathData().move_to(left, y).line_to(right(), y).str(), "level"));
      group.add(text_at(left + 5.0, y - 0.6 * type_size, level.words, "level-words"));
    }
    return group;
  }

  /// True if the band is wide enough somewhere to be visible beside the line.
  bool has_band(const ChartLine& line) const {
    if (line.band.size() != line.points.size()) return false;
    return std::any_of(line.band.begin(), line.band.end(), [&](const auto& span) {
      return std::abs(y_.place(span.first) - y_.place(span.second)) > min_band;
    });
  }

  Element band(const ChartLine& line) const {
    if (!has_band(line)) return Element("g");
    PathData data;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
      const double x = x_.place(line.points[i].at_s);
      const double y = std::round(y_.place(line.band[i].first));
      i == 0 ? data.move_to(x, y) : data.line_to(x, y);
    }
    for (std::size_t i = line.points.size(); i-- > 0;) {
      data.line_to(x_.place(line.points[i].at_s), std::round(y_.place(line.band[i].second)));
    }
    return path_of(data.close().str(), "spread " + line.style);
  }

  Element drawn(const ChartLine& line) const {
    Element group("g");
    group.add(path_of(run_of(line, chart_.from_s, chart_.to_s), "line " + line.style));
    if (!line.thick_s) return group;
    const auto [from_s, to_s] = *line.thick_s;
    return group.add(path_of(run_of(line, from_s, to_s), "line thick " + line.style));
  }

  std::string run_of(const ChartLine& line, double from_s, double to_s) const {
    PathData data;
    for (const ChartPoint& point : line.points) {
      if (point.at_s < from_s || point.at_s > to_s) continue;
      const double x = x_.place(point.at_s);
      const double y = y_.place(point.value);
      data.empty() ? data.move_to(x, y) : data.line_to(x, y);
    }
    return data.str();
  }

  /// Each line's name at its end, spread so that no name covers another.
  Element names() const {
    // Of lines that end at the same value, the one that ends sooner is named first, so that leader
    // lines do not cross.
    constexpr double sooner_first = 1e-3;
    std::vector<double> wanted;
    for (const ChartLine& line : chart_.lines) {
      wanted.push_back(line.points.empty() ? bottom()
                                           : y_.place(line.points.back().value) +
                                                 sooner_first * x_.place(line.points.back().at_s));
    }
    const auto placed = spread_labels(wanted, 1.15 * type_size, top, bottom());
    Element group("g");
    group.set("class", "names");
    for (std::size_t i = 0; i < placed.size(); ++i) {
      const ChartLine& line = chart_.lines[i];
      if (line.points.empty()) continue;
      const double x = x_.place(line.points.back().at_s);
      group.add(path_of(PathData()
                            .move_to(x, wanted[i])
                            .line_to(right() + 6.0, placed[i])
                            .line_to(right() + 10.0, placed[i])
                            .str(),
                        "leader " + line.style));
      group.add(text_at(right() + 13.0, placed[i], cut_to(line.name, max_name_columns), "name"));
    }
    return group;
  }

  Element ranges() const {
    std::vector<double> middles;
    for (const ChartRange& range : chart_.ranges) {
      middles.push_back((y_.place(range.low) + y_.place(range.high)) / 2.0);
    }
    const auto placed = spread_labels(middles, 1.1 * type_size, top, bottom());
    const double words_x =
        right() + 12.0 + bracket_step * static_cast<double>(chart_.ranges.size());
    Element group("g");
    group.set("class", "ranges");
    for (std::size_t i = 0; i < placed.size(); ++i) {
      const ChartRange& range = chart_.ranges[i];
      const double x = right() + 4.0 + bracket_step * static_cast<double>(i);
      PathData bracket;
      bracket.move_to(x, y_.place(range.low)).line_to(x, y_.place(range.high));
      group.add(path_of(bracket.str(), "bracket"));
      PathData leader;
      leader.move_to(x, middles[i]).line_to(words_x - 3.0, placed[i]);
      group.add(path_of(leader.str(), "bracket-leader"));
      group.add(text_at(words_x, placed[i], cut_to(range.words, max_name_columns - 1), "name"));
    }
    return group;
  }

  Element bars() const {
    Element group("g");
    group.set("class", "bars");
    double y = bottom() + 6.0;
    for (const ChartBar& bar : chart_.bars) {
      group.add(text_at(right() + 13.0, y + bar_row / 2.0 - 3.0, cut_to(bar.name, max_name_columns),
                        "name"));
      if (bar.from_s) {
        const double x1 = x_.place(*bar.from_s);
        const double x2 = x_.place(bar.to_s.value_or(chart_.to_s));
        Element rect("rect");
        rect.set("class", "time-bar " + bar.style).set("x", x1).set("y", y);
        rect.set("width", std::max(0.0, x2 - x1)).set("height", bar_row - 8.0);
        group.add(rect);
        if (bar.mark_s) add_mark(group, x_.place(*bar.mark_s), y);
      }
      y += bar_row;
    }
    return group;
  }

  static void add_mark(Element& group, double x, double y) {
    PathData mark;
    mark.move_to(x, y - 2.0).line_to(x, y + bar_row - 6.0);
    group.add(path_of(mark.str(), "bar-mark"));
  }

  const LineChart& chart_;
  const PlannedPour& facts_;
  AxisScale x_;
  AxisScale y_;
};

}  // namespace

Element render_chart(const LineChart& chart, const PlannedPour& facts) {
  return Drawing(chart, facts).svg();
}

}  // namespace slabtide
