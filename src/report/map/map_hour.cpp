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

/// The shadow at each quarter hour, in drawing units per metre of height; "-" if the sun is down.
std::string shadows(const QuarterHours& hours, const PlanView& view, const SiteWeather& weather) {
  return joined(hours.count, ',', [&](std::size_t k) -> std::string {
    const std::size_t step = step_at(weather.grid, hours.at_s(k));
    if (weather.sun_elevation_deg[step] < min_elevation_deg) return "-";
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

/// The cells of the field or of the border strip, each with its index in the zone for the script.
Element cells_of(const std::string& clip, bool strip, const ZoneRun& run,
                 const ZoneDrawing& drawing) {
  Element group("g");
  group.set("clip-path", fmt::format("url(#{})", clip));
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    if (run.cells[i].cell.border != strip) continue;
    Element path("path");
    path.set("d", drawing.shapes[i]);
    group.add(path.set("data-cell", std::string_view(std::to_string(i))));
  }
  return group;
}

Element zone_group(std::size_t zone, const QuarterHours& hours, const ZoneDrawing& drawing,
                   const PlannedPour& facts) {
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
  group.set("data-area", joined(run.cells.size(), ' ', [&](std::size_t i) {
              return whole(percent_per_one * run.cells[i].cell.area_m2);
            }));
  const bool border = facts.job.zones[zone].border.has_value();
  group.add(cells_of(border ? MapGround::field_id(zone) : MapGround::whole_id(zone), false, run,
                     drawing));
  if (border) group.add(cells_of(MapGround::border_id(zone), true, run, drawing));
  return group;
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

Element hour_picture(const QuarterHours& hours, const std::vector<ZoneDrawing>& zones,
                     const PlanView& view, const PlannedPour& facts) {
  Element cells("g");
  cells.set("class", "hour-cells");
  for (std::size_t i = 0; i < zones.size(); ++i) cells.add(zone_group(i, hours, zones[i], facts));
  Element shade("g");
  shade.set("class", "hour-shade");
  Element svg("svg");
  svg.set("class", "plan plan-hour").set("viewBox", view.box()).set("role", "img");
  svg.set("aria-label", "The plan at the hour of the slider; what it shows is said below it");
  svg.set("data-clocks", joined(hours.count, ',', [&](std::size_t k) {
            return day_clock(facts.run.at(hours.at_s(k)), facts.job);
          }));
  svg.set("data-start", std::string(iso8601_minute(facts.run.at(hours.start_s), TimeZone())));
  svg.set("data-shadows", shadows(hours, view, facts.run.weather));
  svg.set("data-obstacles", obstacles(facts.job, view));
  svg.set("data-height", short_number(view.plan_height()));
  return svg.add(cells).add(shade).add(use_of("map-ground")).add(use_of("map-edges"));
}

}  // namespace slabtide
