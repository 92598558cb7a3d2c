#include "map_hour.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr double longest_s = 24.0 * 3600.0;
/// Below this shadows are longer than any site, so it counts as night (ours).
constexpr double min_elevation_deg = 0.5;

double minutes_after(double at_s, const QuarterHours& hours) {
  return std::round((at_s - hours.start_s) / seconds_per_minute);
}

/// Local seconds since midnight.
double clock_s(UtcTime time, const Job& job) {
  const auto local = job.site.time_zone.local_from_utc(time);
  return static_cast<double>(local.time_of_day().total_seconds());
}

std::string whole(double value) { return short_number(value, 0); }

/// The grid step nearest to an instant.
std::size_t step_at(const TimeGrid& grid, double at_s) {
  return grid.index_at(at_s + 0.5 * grid.step_s);
}

template <class Words>
std::string joined(std::size_t count, char between, Words words) {
  std::string all;
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0) all += between;
    all += words(i);
  }
  return all;
}

bool is_night(double at_s, const SiteWeather& weather) {
  return weather.sun_elevation_deg[step_at(weather.grid, at_s)] < min_elevation_deg;
}

/// The shadow at each quarter hour, in drawing units per metre of height; "-" if the sun is down.
std::string shadows(const QuarterHours& hours, const PlanView& view, const SiteWeather& weather) {
  return joined(hours.count, ',', [&](std::size_t k) -> std::string {
    const std::size_t step = step_at(weather.grid, hours.at_s(k));
    if (is_night(hours.at_s(k), weather)) return "-";
    const Point shadow =
        shadow_per_m(weather.sun_azimuth_deg[step], weather.sun_elevation_deg[step]);
    return fmt::format("{} {}", short_number(shadow.x_m * view.units_per_m()),
                       short_number(-shadow.y_m * view.units_per_m()));
  });
}

/// "wall x1 y1 x2 y2 height light" or "tree x y radius 0 height light", height in metres.
std::string obstacles(const Job& job, const PlanView& view) {
  return joined(job.obstacles.size(), ',', [&](std::size_t i) {
    const Obstacle& one = job.obstacles[i];
    const bool wall = one.kind == ObstacleKind::wall;
    return fmt::format("{} {} {} {} {} {} {}", wall ? "wall" : "tree", whole(view.x(one.from.x_m)),
                       whole(view.y(one.from.y_m)),
                       whole(wall ? view.x(one.to.x_m) : one.radius_m * view.units_per_m()),
                       whole(wall ? view.y(one.to.y_m) : 0.0), short_number(one.height_m, 2),
                       short_number(one.light_through, 2));
  });
}

/// The state of a cell, as the script tells it: the class it is drawn with.
std::string_view state_at(const MapCell& cell, const CellRun& run, const QuarterHours& hours,
                          std::size_t quarter) {
  const double at_min = minutes_after(hours.at_s(quarter), hours);
  if (!cell.works) return "idle";
  if (at_min < minutes_after(run.placed_s, hours)) return "wait";
  if (!cell.opens_s || at_min < minutes_after(*cell.opens_s, hours)) return "soon";
  return cell.closes_s && at_min >= minutes_after(*cell.closes_s, hours) ? "stiff" : "ready";
}

/// The cells of the field or of the border strip, each with its index in the zone for the script.
Element cells_of(const std::string& clip, bool strip, std::size_t zone, const QuarterHours& hours,
                 const StillHour& still, const ZoneDrawing& drawing, const PlannedPour& facts) {
  const ZoneRun& run = facts.run.zones[zone];
  Element group("g");
  group.set("clip-path", fmt::format("url(#{})", clip));
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    if (run.cells[i].cell.border != strip) continue;
    Element path("path");
    path.set("d", drawing.shapes[i]);
    path.set("class", state_at(still.choice.zones[zone][i], run.cells[i], hours, still.quarter));
    group.add(path.set("data-cell", std::string_view(std::to_string(i))));
  }
  return group;
}

std::string whole_area(const CellRun& cell) { return whole(percent_per_one * cell.cell.area_m2); }

Element zone_group(std::size_t zone, const QuarterHours& hours, const StillHour& still,
                   const ZoneDrawing& drawing, const PlannedPour& facts) {
  const ZoneRun& run = facts.run.zones[zone];
  Element group("g");
  group.set("class", facts.job.zones[zone].shaded ? "hour-zone all-shade" : "hour-zone");
  group.set("data-name", facts.job.zones[zone].name);
  group.set("data-sun", joined(hours.count, ' ', [&](std::size_t k) {
              return whole(percent_per_one * sunlit_area_fraction(run, facts.run, hours.at_s(k)));
            }));
  group.set("data-placed", joined(run.cells.size(), ' ', [&](std::size_t i) {
              return whole(minutes_after(run.cells[i].placed_s, hours));
            }));
  group.set("data-area",
            joined(run.cells.size(), ' ', [&](std::size_t i) { return whole_area(run.cells[i]); }));
  const bool border = facts.job.zones[zone].border.has_value();
  group.add(cells_of(border ? MapGround::field_id(zone) : MapGround::whole_id(zone), false, zone,
                     hours, still, drawing, facts));
  if (border) {
    group.add(cells_of(MapGround::border_id(zone), true, zone, hours, still, drawing, facts));
  }
  return group;
}

/// The shade on the concrete at one hour; at night all is dark.
Element shade_at(double at_s, const std::vector<ZoneDrawing>& zones, const PlanView& view,
                 const PlannedPour& facts) {
  constexpr double half = 0.5;
  Element shade("g");
  shade.set("class", "hour-shade");
  if (is_night(at_s, facts.run.weather)) {
    Element all("path");
    all.set("class", "dark");
    return shade.add(all.set("d", fmt::format("M0 0H1000V{}H0z", whole(view.plan_height()))));
  }
  const std::size_t step = step_at(facts.run.weather.grid, at_s);
  for (std::size_t zone = 0; zone < zones.size(); ++zone) {
    std::string data;
    const std::vector<CellRun>& cells = facts.run.zones[zone].cells;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const double lit = facts.run.exposures[cells[i].exposure].sunlit_fraction[step];
      if (lit < half) data += zones[zone].shapes[i];
    }
    if (data.empty()) continue;
    Element group("g");
    group.set("clip-path", fmt::format("url(#{})", MapGround::whole_id(zone)));
    shade.add(group.add(Element("path").set("d", data)));
  }
  return shade;
}

/// Rounded as the script rounds.
std::string percent_of(double part, double all) {
  return fmt::format("{:.0f}%", std::floor(percent_per_one * part / all + 0.5));
}

/// The areas in each state, and the zones that have some ready.
struct StillAreas {
  double ready = 0.0;
  double soon = 0.0;  ///< or not placed
  double stiff = 0.0;
  double sunlit_percent = 0.0;
  std::string ready_zones;
};

StillAreas areas_at(const QuarterHours& hours, const StillHour& still, const PlannedPour& facts) {
  StillAreas areas;
  double all = 0.0;
  for (std::size_t zone = 0; zone < facts.run.zones.size(); ++zone) {
    const ZoneRun& run = facts.run.zones[zone];
    const double before = areas.ready;
    double zone_area = 0.0;
    for (std::size_t i = 0; i < run.cells.size(); ++i) {
      const double area = std::round(percent_per_one * run.cells[i].cell.area_m2);
      const std::string_view state =
          state_at(still.choice.zones[zone][i], run.cells[i], hours, still.quarter);
      zone_area += area;
      if (state == "ready") areas.ready += area;
      if (state == "soon" || state == "wait") areas.soon += area;
      if (state == "stiff") areas.stiff += area;
    }
    areas.sunlit_percent +=
        zone_area * std::round(percent_per_one *
                               sunlit_area_fraction(run, facts.run, hours.at_s(still.quarter)));
    all += zone_area;
    if (areas.ready > before) {
      areas.ready_zones += (areas.ready_zones.empty() ? "" : ", ") + facts.job.zones[zone].name;
    }
  }
  areas.sunlit_percent /= all;
  return areas;
}

}  // namespace

QuarterHours quarter_hours(const std::vector<MapChoice>& choices, const PlannedPour& facts) {
  const UtcTime first = facts.run.order.first_placed();
  const double pour_s = seconds_between(facts.run.weather.grid.start, first);
  double last_s = pour_s;
  for (const MapChoice& choice : choices) {
    for (const auto& zone : choice.zones) {
      for (const MapCell& cell : zone) {
        last_s = std::max({last_s, cell.opens_s.value_or(0.0), cell.closes_s.value_or(0.0)});
      }
    }
  }
  QuarterHours hours;
  hours.start_s = pour_s - std::fmod(clock_s(first, facts.job), QuarterHours::step_s);
  const double end_s =
      std::min({last_s, hours.start_s + longest_s, facts.run.weather.grid.end_s()});
  hours.count =
      static_cast<std::size_t>(std::ceil((end_s - hours.start_s) / QuarterHours::step_s)) + 1;
  return hours;
}

Point shadow_per_m(double sun_azimuth_deg, double sun_elevation_deg) {
  if (!(sun_elevation_deg > 0.0)) throw std::invalid_argument("shadow_per_m: the sun is down");
  const double length_m = 1.0 / std::tan(sun_elevation_deg * radians_per_degree);
  const double azimuth = sun_azimuth_deg * radians_per_degree;
  return {-length_m * std::sin(azimuth), -length_m * std::cos(azimuth)};
}

double sunlit_area_fraction(const ZoneRun& zone, const PourRun& run, double at_s) {
  const std::size_t step = step_at(run.weather.grid, at_s);
  double sunlit_m2 = 0.0;
  double area_m2 = 0.0;
  for (const CellRun& cell : zone.cells) {
    area_m2 += cell.cell.area_m2;
    sunlit_m2 += cell.cell.area_m2 * run.exposures[cell.exposure].sunlit_fraction[step];
  }
  return sunlit_m2 / area_m2;
}

std::string times_for_script(const MapChoice& choice, const QuarterHours& hours) {
  std::string all;
  for (const auto& zone : choice.zones) {
    for (const MapCell& cell : zone) {
      if (!all.empty() || &zone != &choice.zones.front() || &cell != &zone.front()) all += ',';
      if (!cell.works) continue;
      if (!cell.opens_s) {
        all += '-';
        continue;
      }
      all += whole(minutes_after(*cell.opens_s, hours));
      if (cell.closes_s) all += fmt::format(" {}", whole(minutes_after(*cell.closes_s, hours)));
    }
  }
  return all;
}

std::string quarter_words(const QuarterHours& hours, std::size_t quarter,
                          const PlannedPour& facts) {
  return day_clock(facts.run.at(hours.at_s(quarter)), facts.job);
}

std::string hour_words(const QuarterHours& hours, const StillHour& still,
                       const PlannedPour& facts) {
  const StillAreas areas = areas_at(hours, still, facts);
  const double worked = areas.ready + areas.soon + areas.stiff;
  return fmt::format(
      "{}, {}: {} ready{}, {} not yet, {} too late. {}", quarter_words(hours, still.quarter, facts),
      still.choice.words, percent_of(areas.ready, worked),
      areas.ready_zones.empty() ? std::string() : fmt::format(" ({})", areas.ready_zones),
      percent_of(areas.soon, worked), percent_of(areas.stiff, worked),
      is_night(hours.at_s(still.quarter), facts.run.weather)
          ? std::string("The sun is down.")
          : fmt::format("Sun on {} of the concrete.",
                        percent_of(areas.sunlit_percent, percent_per_one)));
}

Element hour_picture(const QuarterHours& hours, const StillHour& still,
                     const std::vector<TimeLayer>& layers, const std::vector<ZoneDrawing>& zones,
                     const PlanView& view, const PlannedPour& facts) {
  Element cells("g");
  cells.set("class", "hour-cells");
  for (std::size_t i = 0; i < zones.size(); ++i)
    cells.add(zone_group(i, hours, still, zones[i], facts));
  Element svg("svg");
  svg.set("class", "plan plan-hour").set("viewBox", view.box()).set("role", "img");
  svg.set("aria-label", "The plan at one hour; what it shows is said beside it");
  svg.set("data-clocks",
          joined(hours.count, ',', [&](std::size_t k) { return quarter_words(hours, k, facts); }));
  svg.set("data-start", std::string(iso8601_minute(facts.run.at(hours.start_s), TimeZone())));
  svg.set("data-shadows", shadows(hours, view, facts.run.weather));
  svg.set("data-obstacles", obstacles(facts.job, view));
  svg.set("data-height", short_number(view.plan_height()));
  svg.add(cells).add(shade_at(hours.at_s(still.quarter), zones, view, facts));
  svg.add(use_of("map-ground"));
  for (const TimeLayer& layer : layers) svg.add(layer.below);
  svg.add(use_of("map-edges"));
  for (const TimeLayer& layer : layers) svg.add(layer.above);
  return svg;
}

}  // namespace slabtide
