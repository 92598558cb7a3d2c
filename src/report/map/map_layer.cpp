#include "map_layer.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "cell_shapes.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "working_way.h"

namespace slabtide {

namespace {

constexpr std::size_t max_levels = 9;
/// Shorter lines have no room for their time.
constexpr double min_labelled_units = 40.0;

/// Of a zone, each tried for its time.
constexpr std::size_t max_parts = 64;

// Dimensions of the drawing, in its own units (ours).
constexpr double head_length = 30.0;
constexpr double head_half = 15.0;
constexpr double start_radius = 9.0;
/// Some type is wider than `label_box` takes it to be.
constexpr double edge_gap = 16.0;

const std::vector<double> level_steps_min{5, 10, 15, 20, 30, 60, 120, 240};

/// Local minutes since the midnight before the grid's start, so that levels are round clock times.
double start_clock_min(const PlannedPour& facts) {
  const auto local =
      facts.job.site.time_zone.local_from_utc(facts.run.weather.grid.start).time_of_day();
  return static_cast<double>(local.total_seconds()) / seconds_per_minute;
}

std::string clock_at(double at_s, const PlannedPour& facts) {
  return clock_of(facts.job).time(facts.run.at(at_s));
}

Element path_of(std::string_view data) {
  Element path("path");
  path.set("d", data);
  return path;
}

std::string clip_to(const std::string& id) { return fmt::format("url(#{})", id); }

Element clipped(const std::string& clip, std::string_view markup) {
  Element group("g");
  group.set("clip-path", clip_to(clip)).add_markup(markup);
  return group;
}

/// The times of one choice while they are being drawn.
class TimeLines {
 public:
  TimeLines(const MapChoice& choice, const TimeScale& scale, const std::vector<ZoneDrawing>& zones,
            const MapGround& ground, const PlanView& view, const PlannedPour& facts)
      : choice_(choice),
        scale_(scale),
        zones_(zones),
        view_(view),
        facts_(facts),
        labels_(ground.labels()) {}

  Element ways() {
    Element group("g");
    group.set("class", "ways");
    for (std::size_t i = 0; i < zones_.size(); ++i) {
      const std::vector<Point> way = working_way(facts_.job.zones[i], facts_.plan.zones[i],
                                                 facts_.run.zones[i], choice_.zones[i]);
      if (way.empty()) continue;
      group.add_markup(arrow(way));
      keep_free(way);
    }
    return group;
  }

  /// Fills in their times too.
  Element lines(std::string& letters) {
    Element group("g");
    group.set("class", "lines");
    for (std::size_t i = 0; i < zones_.size(); ++i) {
      const std::string drawn = lines_of(i, letters);
      if (drawn.empty()) continue;
      const bool border = facts_.job.zones[i].border.has_value();
      group.add(clipped(border ? MapGround::field_id(i) : MapGround::whole_id(i), drawn));
    }
    return group;
  }

 private:
  std::string arrow(const std::vector<Point>& way) const {
    std::vector<Point> units;
    for (const Point& p : way) units.push_back({view_.x(p.x_m), view_.y(p.y_m)});
    const Point tip = units.back();
    const Point before = units[units.size() - 2];
    const double length = std::hypot(tip.x_m - before.x_m, tip.y_m - before.y_m);
    const double dx = (tip.x_m - before.x_m) / length;
    const double dy = (tip.y_m - before.y_m) / length;
    const Point neck{tip.x_m - head_length * dx, tip.y_m - head_length * dy};
    PathData shaft;
    for (std::size_t i = 0; i + 1 < units.size(); ++i) {
      i == 0 ? shaft.move_to(units[i].x_m, units[i].y_m)
             : shaft.line_to(units[i].x_m, units[i].y_m);
    }
    shaft.line_to(neck.x_m, neck.y_m);
    PathData head;
    head.move_to(tip.x_m, tip.y_m)
        .line_to(neck.x_m - head_half * dy, neck.y_m + head_half * dx)
        .line_to(neck.x_m + head_half * dy, neck.y_m - head_half * dx)
        .close();
    Element start("circle");
    start.set("class", "start").set("cx", units[0].x_m).set("cy", units[0].y_m);
    start.set("r", start_radius);
    return path_of(shaft.str()).set("class", "casing").str() +
           path_of(shaft.str()).set("class", "shaft").str() +
           path_of(head.str()).set("class", "head").str() + start.str();
  }

  /// Keeps labels from covering an arrow.
  void keep_free(const std::vector<Point>& way) {
    constexpr int pieces = 6;
    for (std::size_t i = 1; i < way.size(); ++i) {
      for (int k = 0; k <= pieces; ++k) {
        const double fraction = static_cast<double>(k) / pieces;
        const double x_m = way[i - 1].x_m + (way[i].x_m - way[i - 1].x_m) * fraction;
        const double y_m = way[i - 1].y_m + (way[i].y_m - way[i - 1].y_m) * fraction;
        labels_.take({view_.x(x_m), view_.y(y_m), head_half, head_half});
      }
    }
  }

  /// A time of a zone that no line crosses: that of its middle, or of a cell with room for it.
  std::string time_of(std::size_t zone) {
    const ZoneDrawing& drawing = zones_[zone];
    std::vector<std::size_t> ready;
    for (const std::size_t i : drawing.field) {
      if (choice_.zones[zone][i].opens_s) ready.push_back(i);
    }
    // Halfway, quarters, eighths and so on, until every part of the zone was tried.
    for (std::size_t parts = 2; parts <= max_parts && parts <= 2 * ready.size(); parts *= 2) {
      for (std::size_t part = 1; part < parts; part += 2) {
        const std::size_t cell = ready[ready.size() * part / parts];
        std::string time = label_at({facts_.run.zones[zone].cells[cell].cell.centre},
                                    *choice_.zones[zone][cell].opens_s);
        if (!time.empty()) return time;
      }
    }
    return {};
  }

  std::string lines_of(std::size_t zone, std::string& letters) {
    const ZoneDrawing& drawing = zones_[zone];
    if (!drawing.heights) return {};
    std::vector<std::optional<double>> opens;
    for (const std::size_t i : drawing.field) opens.push_back(choice_.zones[zone][i].opens_s);
    const Lattice lattice = drawing.heights->lattice(opens);
    std::string drawn;
    std::string times;
    for (const double level : scale_.levels_s()) {
      for (const ContourLine& line : contour_lines(lattice, level)) {
        drawn += path_of(view_.line(line)).set("class", "casing").str();
        drawn += path_of(view_.line(line)).str();
        times += label_on(line, level);
      }
    }
    letters += times.empty() ? time_of(zone) : times;
    return drawn;
  }

  /// Halfway along the line, or closer to one end.
  std::string label_on(const ContourLine& line, double level_s) {
    if (line_length_m(line) * view_.units_per_m() < min_labelled_units) return {};
    const std::size_t n = line.size();
    return label_at(
        {middle_of(line), line[n / 4], line[n - 1 - n / 4], line[n / 8], line[n - 1 - n / 8],
         beyond(line[n - 2], line[n - 1]), beyond(line[1], line[0]), line.back(), line.front()},
        level_s);
  }

  /// The position of a label just beyond the end of a line, in its direction.
  Point beyond(Point before, Point end) const {
    const double length_m = std::hypot(end.x_m - before.x_m, end.y_m - before.y_m);
    if (!(length_m > 0.0)) return end;  // a line may end with the same point twice
    const double dx = (end.x_m - before.x_m) / length_m;
    const double dy = (end.y_m - before.y_m) / length_m;
    const LabelBox box = label_box(0.0, 0.0, "00:00", map_type_size);
    const double away_m =
        (std::abs(dx) * box.width + std::abs(dy) * box.height) / 2.0 / view_.units_per_m();
    return {end.x_m + dx * away_m, end.y_m + dy * away_m};
  }

  /// The clock time at the first of the positions that is free.
  std::string label_at(const std::vector<Point>& places, double at_s) {
    const std::string words = clock_at(at_s, facts_);
    for (const Point& p : places) {
      const LabelBox box = label_box(view_.x(p.x_m), view_.y(p.y_m), words, map_type_size)
                               .within(view_.width(), view_.plan_height(), edge_gap);
      if (!labels_.claim(box)) continue;
      Element text("text");
      return text.set("x", box.x).set("y", box.y).text(words).str();
    }
    return {};
  }

  const MapChoice& choice_;
  const TimeScale& scale_;
  const std::vector<ZoneDrawing>& zones_;
  const PlanView& view_;
  const PlannedPour& facts_;
  LabelPlaces labels_;
};

}  // namespace

std::vector<ZoneDrawing> render_zones(const PlannedPour& facts, const PlanView& view) {
  std::vector<ZoneDrawing> drawings;
  for (std::size_t zone = 0; zone < facts.job.zones.size(); ++zone) {
    ZoneDrawing drawing;
    std::vector<Point> centres;
    const ZoneRun& run = facts.run.zones[zone];
    for (const Outline& shape : cell_shapes(run)) drawing.shapes.push_back(view.ring(shape));
    for (std::size_t i = 0; i < run.cells.size(); ++i) {
      if (run.cells[i].cell.border) continue;
      drawing.field.push_back(i);
      centres.push_back(run.cells[i].cell.centre);
    }
    if (!centres.empty()) {
      drawing.heights =
          std::make_unique<CellField>(centres, facts.job.zones[zone].outline, run.cell_m);
    }
    drawings.push_back(std::move(drawing));
  }
  return drawings;
}

TimeScale::TimeScale(const MapChoice& choice, const PlannedPour& facts)
    : first_s_(std::numeric_limits<double>::infinity()),
      last_s_(-std::numeric_limits<double>::infinity()) {
  for (const auto& zone : choice.zones) {
    for (const MapCell& cell : zone) {
      if (!cell.opens_s) continue;
      first_s_ = std::min(first_s_, *cell.opens_s);
      last_s_ = std::max(last_s_, *cell.opens_s);
    }
  }
  if (empty()) return;
  const double clock_min = start_clock_min(facts);
  const auto minutes = [&](double at_s) { return at_s / seconds_per_minute + clock_min; };
  const Levels levels =
      even_levels(minutes(first_s_), minutes(last_s_), level_steps_min, max_levels);
  step_min_ = levels.step;
  for (const double level : levels.at) {
    levels_s_.push_back((level - clock_min) * seconds_per_minute);
  }
}

TimeLayer time_layer(const MapChoice& choice, bool shown, const std::vector<ZoneDrawing>& zones,
                     const MapGround& ground, const PlanView& view, const PlannedPour& facts) {
  const TimeScale scale(choice, facts);
  TimeLines drawn(choice, scale, zones, ground, view, facts);
  const auto layer = [&](const Element& part) {
    Element group("g");
    group.set("class", shown ? "time-layer shown" : "time-layer").set("data-choice", choice.id);
    return group.add(part);
  };
  Element below("g");
  below.add(drawn.ways());  // first: the lines' times stay clear of them
  std::string letters;
  below.add(drawn.lines(letters));
  Element times("g");
  times.set("class", "lines").add_markup(letters);
  return {layer(below), layer(times)};
}

}  // namespace slabtide
