#include "crew_cautions.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "slabtide/weather/air/moist_air.h"
#include "weather/air/heat_index.h"

namespace slabtide {

namespace {

/// Bands of the heat index in OSHA's guide for employers: moderate from 91 °F on, high from 103 °F
/// on. From memory.
constexpr double moderate_index_c = celsius_from_fahrenheit(91.0);
constexpr double high_index_c = celsius_from_fahrenheit(103.0);

/// What full sun adds at most: 15 °F (NWS, from memory).
constexpr double sun_adds_k = 15.0 / 1.8;

double index_at(const SiteWeather& weather, std::size_t k) {
  return heat_index_c(weather.air_c[k],
                      humidity_fraction(weather.air_c[k], weather.dew_point_c[k]));
}

/// From the first arrival of the crew to its last leave on the pour's day.
std::optional<PlasticSpan> on_site(const Watch& watch) {
  std::optional<PlasticSpan> span;
  for (const CrewMember& one : watch.crew.people) {
    for (const CrewVisit& visit : one.visits) {
      if (clock_of(watch.job).day(visit.arrives) != watch.job.pour.date) continue;
      if (!span) span = PlasticSpan{visit.arrives, visit.leaves};
      span = PlasticSpan{std::min(span->from, visit.arrives), std::max(span->to, visit.leaves)};
    }
  }
  return span;
}

std::string over_words(const Watch& watch, Steps steps, double limit_c) {
  const auto over = first_span(
      watch.run, steps, [&](std::size_t k) { return index_at(watch.run.weather, k) >= limit_c; });
  if (!over) return {};
  return fmt::format(", over {} from {} to {}", watch.temperature(limit_c),
                     watch.pour_clock(over->from), watch.pour_clock(over->to));
}

/// How long somebody is on site on the pour's day while the heat index is over the limit.
double hot_min(const Watch& watch, const CrewMember& one, double limit_c) {
  const TimeGrid& grid = watch.run.weather.grid;
  std::size_t hot = 0;
  for (const CrewVisit& visit : one.visits) {
    if (clock_of(watch.job).day(visit.arrives) != watch.job.pour.date) continue;
    const Steps steps = steps_between(grid, visit.arrives, visit.leaves);
    for (std::size_t k = steps.first; k < steps.end; ++k) {
      if (index_at(watch.run.weather, k) >= limit_c) ++hot;
    }
  }
  return static_cast<double>(hot) * grid.step_s / seconds_per_minute;
}

/// ". Over 91 °F: Ann 2 h 10 min (1 h of it over 103 °F), Ben 45 min"; empty if the job tells
/// nobody apart.
std::string hot_hands_words(const Watch& watch) {
  if (watch.job.crew.hands.empty()) return {};
  std::string words;
  for (const CrewMember& one : watch.crew.people) {
    const auto hot = static_cast<int>(std::lround(hot_min(watch, one, moderate_index_c)));
    const auto very_hot = static_cast<int>(std::lround(hot_min(watch, one, high_index_c)));
    if (hot == 0) continue;
    words += words.empty() ? fmt::format(". Over {}: ", watch.temperature(moderate_index_c)) : ", ";
    words += fmt::format("{} {}", one.name, duration_words(hot));
    if (very_hot == 0) continue;
    words += fmt::format(" ({} of it over {})", duration_words(very_hot),
                         watch.temperature(high_index_c));
  }
  return words;
}

/// When the surface of a zone has its look, and when it can be walked on again.
struct ClosedWay {
  std::size_t zone = 0;
  UtcTime finished;
  std::optional<UtcTime> opens;  ///< empty if that is after the plan's end
};

std::optional<ClosedWay> closed_way(const Watch& watch, std::size_t zone) {
  std::optional<UtcTime> finished;
  for (std::size_t i = 0; i < watch.crew.tasks.size(); ++i) {
    const Task& task = watch.crew.tasks[i];
    if (!task.place || task.place->zone != zone || !makes_the_finish(task.kind)) continue;
    finished = std::max(watch.crew.ends[i], finished.value_or(watch.crew.ends[i]));
  }
  if (!finished) return std::nullopt;
  return ClosedWay{zone, *finished, watch.zones[zone].opens_after_set(Operation::walk)};
}

/// The first work in the zone that falls into the time the way is closed, that of the finish before
/// any other.
std::optional<std::size_t> shut_out(const Watch& watch, std::size_t zone, const ClosedWay& way) {
  std::optional<std::size_t> first;
  const auto comes_before = [&](std::size_t a, std::size_t b) {
    const bool makes_a = makes_the_finish(watch.crew.tasks[a].kind);
    const bool makes_b = makes_the_finish(watch.crew.tasks[b].kind);
    return makes_a != makes_b ? makes_a : watch.crew.starts[a] < watch.crew.starts[b];
  };
  for (std::size_t i = 0; i < watch.crew.tasks.size(); ++i) {
    const Task& task = watch.crew.tasks[i];
    if (!task.place || task.place->zone != zone) continue;
    const bool is_shut =
        watch.crew.ends[i] > way.finished && (!way.opens || watch.crew.starts[i] < *way.opens);
    if (is_shut && (!first || comes_before(i, *first))) first = i;
  }
  return first;
}

void watch_way(Watch& watch, std::size_t zone, const ClosedWay& way) {
  const auto task = shut_out(watch, zone, way);
  if (!task) return;
  const std::string& over = watch.zones[way.zone].name;
  const std::string walked = way.opens ? "not walked on before " + watch.pour_clock(*way.opens)
                                       : "not walked on within this plan";
  watch.add("no_way_in", "no way to it", CautionLevel::caution, watch.zones[zone].name,
            watch.crew.starts[*task],
            fmt::format("no way to the {} at {} except over the {}, finished at {} and {}: finish "
                        "the {} last, leave one of the two for another day, or bridge it with "
                        "planks that rest beside it",
                        task_kind_words(watch.crew.tasks[*task].kind),
                        watch.pour_clock(watch.crew.starts[*task]), over,
                        watch.pour_clock(way.finished), walked, over),
            "worked out from this plan");
}

}  // namespace

void watch_heat(Watch& watch) {
  const auto span = on_site(watch);
  if (!span) return;
  const SiteWeather& weather = watch.run.weather;
  const Steps steps = steps_between(weather.grid, span->from, span->to);
  double highest_c = moderate_index_c;
  std::optional<std::size_t> highest;
  for (std::size_t k = steps.first; k < steps.end; ++k) {
    if (!(index_at(weather, k) > highest_c)) continue;
    highest_c = index_at(weather, k);
    highest = k;
  }
  if (!highest) return;
  const auto hot = first_span(
      watch.run, steps, [&](std::size_t k) { return index_at(weather, k) >= moderate_index_c; });
  const bool high = highest_c >= high_index_c;
  const UtcTime at = watch.run.at(static_cast<double>(*highest) * weather.grid.step_s);
  watch.add("heat", "heat for the crew", high ? CautionLevel::caution : CautionLevel::note, {},
            hot->from,
            fmt::format("heat index up to {} at {}{}{}; full sun feels up to {} hotter still: a "
                        "cup of water every 15 to 20 min, rest in the shade{}, a short first day "
                        "for whoever is new to it, and an eye on each other{}",
                        watch.temperature(highest_c), watch.pour_clock(at),
                        over_words(watch, steps, moderate_index_c),
                        over_words(watch, steps, high_index_c),
                        temperature_difference_words(sun_adds_k, watch.job.units),
                        high ? " every hour" : "", hot_hands_words(watch)),
            "NWS heat index (Rothfusz 1990) and OSHA's bands of it, from memory", hot->to);
}

void watch_hours(Watch& watch) {
  for (std::size_t i = 0; i < watch.crew.tasks.size(); ++i) {
    const Task& task = watch.crew.tasks[i];
    if (!task.any_hours) continue;
    watch.add(
        "outside_hours", "nobody is there long enough",
        makes_the_finish(task.kind) ? CautionLevel::stop : CautionLevel::caution, task.zone,
        watch.crew.starts[i],
        fmt::format("the crew's hours leave nobody there long enough for the {}, {} to {}: it is "
                    "planned without regard to them. Agree on longer hours, or bring one more hand",
                    task_words(task), watch.pour_clock(watch.crew.starts[i]),
                    watch.pour_clock(watch.crew.ends[i])),
        "worked out from this plan", watch.crew.ends[i]);
  }
}

void watch_way_in(Watch& watch) {
  for (std::size_t zone = 0; zone < watch.zones.size(); ++zone) {
    for (const std::string& name : watch.job.zones[zone].reached_over) {
      for (std::size_t other = 0; other < watch.zones.size(); ++other) {
        if (watch.zones[other].name != name) continue;
        if (const auto way = closed_way(watch, other)) watch_way(watch, zone, *way);
      }
    }
  }
}

}  // namespace slabtide
