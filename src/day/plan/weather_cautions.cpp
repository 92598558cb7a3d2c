#include "weather_cautions.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "job/model/covers.h"
#include "shelter.h"
#include "slab/process/setting.h"
#include "slabtide/core/units.h"
#include "slabtide/day/plan/weather_risk.h"
#include "slabtide/weather/air/moist_air.h"
#include "weather/sky/nights.h"

namespace slabtide {

namespace {

constexpr double freezing_c = 0.0;
/// How long after placing the air temperature is checked for cold: the first night (ours).
constexpr double cold_watch_h = 24.0;

const OperationWindow* last_plastic_window(const PartPlan& part) {
  const OperationWindow* last = nullptr;
  for (const OperationWindow& window : part.windows) {
    if (window.operation >= Operation::saw_dry || !window.open_all_over) continue;
    if (last == nullptr || *window.open_all_over > *last->open_all_over) last = &window;
  }
  return last;
}

/// A pour placed this shortly before sunset is meant to be at night (ours), so there is no advice
/// to start earlier.
constexpr double evening_s = 2.0 * seconds_per_hour;

/// Whether the job has blankets on everything by then, as cold weather asks (ACI 306R).
bool is_covered_by(const Watch& watch, UtcTime at) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const auto final_set = watch.zones[i].final_set();
    if (!lies_under_blankets(watch.job.zones[i], watch.job.pour) || !final_set || *final_set > at) {
      return false;
    }
  }
  return true;
}

/// The first of the steps in which the air is under `air_c`; `steps.end` if none is.
std::size_t first_under(const SiteWeather& weather, const Steps& steps, double air_c) {
  std::size_t k = steps.first;
  while (k < steps.end && weather.air_c[k] >= air_c) ++k;
  return k;
}

/// When a zone is worked on before it sets: during placing, and from the opening of each window
/// until it is open all over.
std::vector<TimeSpan> work_spans(const ZonePlan& zone) {
  std::vector<TimeSpan> spans{{zone.placed.start, zone.placed.end}};
  for (const OperationWindow& window : zone.whole.windows) {
    if (window.operation >= Operation::saw_dry || !window.opens) continue;
    spans.push_back({*window.opens, window.open_all_over.value_or(*window.opens)});
  }
  return spans;
}

/// From the first to the last work on the zone between two instants.
std::optional<TimeSpan> work_within(const ZonePlan& zone, UtcTime from, UtcTime to) {
  std::optional<TimeSpan> found;
  for (const TimeSpan& span : work_spans(zone)) {
    if (span.to <= from || span.from >= to) continue;
    const TimeSpan within{std::max(span.from, from), std::min(span.to, to)};
    if (!found) found = within;
    found = TimeSpan{std::min(found->from, within.from), std::max(found->to, within.to)};
  }
  return found;
}

/// From the first to the last work on the zone in the first night that has any; from sunset if the
/// work started before it.
std::optional<TimeSpan> work_in_the_dark(const Watch& watch, const ZonePlan& zone) {
  const std::vector<TimeSpan> work = work_spans(zone);
  UtcTime end = zone.placed.end;
  for (const TimeSpan& span : work) end = std::max(end, span.to);
  const UtcTime after_end = after_seconds(end, 1.0);
  for (const TimeSpan& night : nights_between(zone.placed.start, after_end, watch.job.site)) {
    // If the work ends before the night does, the night's end here is not a morning.
    const bool has_morning = night.to < after_end;
    const UtcTime dark_to = has_morning ? after_seconds(night.to, -twilight_s) : night.to;
    std::optional<UtcTime> last;
    bool day_work_before = false;
    std::optional<UtcTime> first;
    for (const TimeSpan& span : work) {
      if (span.from < night.from) day_work_before = true;
      if (span.to < night.from || span.from > dark_to) continue;
      const UtcTime from = std::max(span.from, night.from);
      first = std::min(first.value_or(from), from);
      const UtcTime to = std::min(span.to, night.to);
      last = std::max(last.value_or(to), to);
    }
    if (!first) continue;
    const bool same_evening = *last == end && day_work_before;
    return TimeSpan{same_evening ? night.from : *first, *last};
  }
  return std::nullopt;
}

/// Work of the days after, which no forecast of a day or two reaches and a later one tells: it is
/// no fault of this plan. The wash-off of exposed aggregate is no such work, since it can come too
/// late.
bool is_of_days_after(Operation operation) {
  return operation == Operation::walk || operation == Operation::wash ||
         operation == Operation::seal;
}

/// What must be known on the pour's day and comes after the end of the forecast, in words; empty if
/// there is nothing.
std::string first_missing(const Watch& watch) {
  for (const ZonePlan& zone : watch.zones) {
    for (const OperationWindow& window : zone.whole.windows) {
      if (window.open_all_over || is_of_days_after(window.operation)) continue;
      return fmt::format("the {} is ready for: {}", zone.name, operation_words(window.operation));
    }
    if (!zone.saws.empty() && !zone.saws.front().latest) {
      return fmt::format("it is known when the {} must be cut", zone.name);
    }
  }
  return {};
}

/// "wash (patio, walk), seal (patio)", of the days after; a sealer that waits for weeks is not
/// missed.
std::string left_for_later(const Watch& watch) {
  std::string words;
  for (const Operation operation : {Operation::walk, Operation::wash, Operation::seal}) {
    const bool waits_anyway = operation == Operation::seal &&
                              watch.practice.set.seal_after_days * hours_per_day >= horizon_h;
    if (waits_anyway) continue;
    std::string zones;
    for (const ZonePlan& zone : watch.zones) {
      const OperationWindow* window = zone.late_window(operation);
      if (window == nullptr || window->open_all_over) continue;
      zones += (zones.empty() ? "" : ", ") + zone.name;
    }
    if (zones.empty()) continue;
    words += fmt::format("{}{} ({})", words.empty() ? "" : ", ", operation_words(operation), zones);
  }
  return words;
}

}  // namespace

void watch_cold(Watch& watch) {
  const WeatherLimits& limits = watch.practice.limits;
  const SiteWeather& weather = watch.run.weather;
  const PlasticSpan span = plastic_span(watch);
  const Steps steps =
      steps_between(weather.grid, span.from,
                    after_seconds(watch.zones.back().placed.end, cold_watch_h * seconds_per_hour));
  const auto at_step = [&](std::size_t k) {
    return watch.run.at(static_cast<double>(k) * weather.grid.step_s);
  };
  const std::size_t cold = first_under(weather, steps, limits.cold_air_c);
  if (cold == steps.end) return;
  const UtcTime at = at_step(cold);
  // Concrete that is still worked on stands cool air; it is frost, and the night, that want
  // blankets.
  const bool covered = is_covered_by(watch, at_step(first_under(weather, steps, freezing_c)));
  watch.add("cold_weather", "cold weather", covered ? CautionLevel::note : CautionLevel::caution,
            {}, at,
            fmt::format("air under {} from {}: cold-weather rules apply. Blankets {}, "
                        "concrete at {} or more when placed and kept there, no frost before {}",
                        watch.temperature(limits.cold_air_c), watch.clock(at),
                        covered ? "on as it sets, and left on" : "on hand",
                        watch.temperature(limits.cold_concrete_c),
                        strength_words(limits.protect_until_psi, watch.job.units)),
            "ACI 306R-10, published");
  const double placed_c = watch.run.mix_of(watch.run.zones.front()).discharge_c;
  if (placed_c >= limits.cold_concrete_c) return;
  watch.add("cold_concrete", "concrete too cold", CautionLevel::caution, {},
            watch.zones.front().placed.start,
            fmt::format("concrete at {} is under the {} that cold weather asks of a thin section: "
                        "order it with warm water",
                        watch.temperature(placed_c), watch.temperature(limits.cold_concrete_c)),
            "ACI 306R-10, published");
}

void watch_ground(Watch& watch) {
  if (watch.run.ground_c > freezing_c) return;
  watch.add("frozen_ground", "frozen ground", CautionLevel::stop, {},
            watch.zones.front().placed.start,
            fmt::format("the ground is taken to be at {}: never pour on frozen ground. Thaw it, "
                        "keep it covered, measure it",
                        watch.temperature(watch.run.ground_c)),
            "ACI 306R-10, published");
}

void watch_freezing(Watch& watch) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    if (!watch.zones[i].frost.at) continue;
    const UtcTime at = *watch.zones[i].frost.at;
    watch.add("freezing", "frost before it is strong", CautionLevel::stop, watch.zones[i].name, at,
              fmt::format(
                  "the surface freezes about {} before it has {}{} or another day", watch.clock(at),
                  strength_words(watch.practice.limits.protect_until_psi, watch.job.units),
                  lies_under_blankets(watch.job.zones[i], watch.job.pour)
                      ? ", even under its blankets: thicker ones and sooner, warmer concrete"
                      : ": blankets on well before that, warmer concrete"),
              "ACI 306R-10, published");
  }
}

void watch_hot_weather(Watch& watch) {
  const SiteWeather& weather = watch.run.weather;
  for (const ZonePlan& zone : watch.zones) {
    if (zone.whole.peak_evaporation_kg_m2_h <= watch.practice.evaporation.precautions_kg_m2_h) {
      continue;
    }
    const Steps steps = steps_between(weather.grid, zone.placed.start,
                                      zone.whole.initial_set.value_or(zone.placed.end));
    for (std::size_t k = steps.first; k < steps.end; ++k) {
      if (weather.air_c[k] < watch.practice.limits.hot_air_c) continue;
      const UtcTime at = watch.run.at(static_cast<double>(k) * weather.grid.step_s);
      watch.add("hot_weather", "hot weather", CautionLevel::caution, {}, at,
                fmt::format("hot weather from {}: air over {} and fast drying together. Dampen "
                            "the base, shade the crew and the load, no water added to the mix for "
                            "slump",
                            watch.clock(at), watch.temperature(watch.practice.limits.hot_air_c)),
                "ACI 305.1-14, published");
      return;
    }
  }
}

void watch_dry_air(Watch& watch) {
  const SiteWeather& weather = watch.run.weather;
  const PlasticSpan plastic = plastic_span(watch);
  const auto dry = first_span(watch.run, steps_between(weather.grid, plastic.from, plastic.to),
                              [&](std::size_t k) {
                                return humidity_fraction(weather.air_c[k], weather.dew_point_c[k]) <
                                       watch.practice.limits.dry_humidity_fraction;
                              });
  if (!dry) return;
  const bool fog = fog_makes_sense(watch.zones.front(), watch.run, watch.practice.limits);
  watch.add("dry_air", "dry air", CautionLevel::note, {}, dry->from,
            fmt::format("humidity under {} from {}: the top dries fast even in the shade. "
                        "Dampen the base, {}cover between passes",
                        percent_words(watch.practice.limits.dry_humidity_fraction),
                        watch.clock(dry->from), fog ? "fog lightly, " : ""),
            "common practice", dry->to);
}

void watch_wind(Watch& watch) {
  const SiteWeather& weather = watch.run.weather;
  const PlasticSpan plastic = plastic_span(watch);
  const auto windy = first_span(
      watch.run, steps_between(weather.grid, plastic.from, plastic.to), [&](std::size_t k) {
        return weather.wind_slab_m_s[k] >= watch.practice.limits.crust_wind_m_s;
      });
  if (!windy) return;
  watch.add("wind_crust", "wind crusts the top", CautionLevel::caution, {}, windy->from,
            fmt::format("wind at the slab over {} from {} to {}: it skins the top over soft "
                        "concrete. Put up a windbreak, start earlier",
                        wind_words(watch.practice.limits.crust_wind_m_s, watch.job.units),
                        watch.clock(windy->from), watch.clock(windy->to)),
            "common practice", windy->to);
}

void watch_rain(Watch& watch) {
  const SiteWeather& weather = watch.run.weather;
  const PlasticSpan plastic = plastic_span(watch);
  const RainRisk rain = rain_between(watch.run, plastic.from, plastic.to, watch.practice.limits);
  if (const auto& wet = rain.first) {
    watch.add(
        "rain", "rain on the fresh slab",
        rain.too_often() ? CautionLevel::stop : CautionLevel::caution, {}, wet->from,
        fmt::format("rain from {}{} before the slab has set: plastic sheeting and "
                    "boards to hold it down, start earlier, or pour another day",
                    watch.clock(wet->from),
                    wet->chance > 0.0 ? fmt::format(" ({} chance)", percent_words(wet->chance))
                                      : std::string()),
        "common practice", wet->to);
  }
  const Steps steps = steps_between(weather.grid, plastic.from, plastic.to);
  const auto thunder =
      first_span(watch.run, steps, [&](std::size_t k) { return weather.thunder[k] != 0; });
  if (!thunder) return;
  watch.add("thunder", "thunder", CautionLevel::stop, {}, thunder->from,
            fmt::format("thunder forecast about {} with the slab still soft: hands off long tools "
                        "and pumps, people inside; plan another hour",
                        watch.clock(thunder->from)),
            "common practice", thunder->to);
}

void watch_dew(Watch& watch) {
  const SiteWeather& weather = watch.run.weather;
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const ColumnHistory& history = watch.run.histories[watch.run.zones[i].cells.front().history];
    for (std::size_t j = 0; j < history.time_s.size(); ++j) {
      if (history.resistance_middle_psi[j] >= final_set_psi) break;
      const std::size_t k = weather.grid.index_at(history.time_s[j]);
      if (history.surface_c[j] > weather.dew_point_c[k]) continue;
      const UtcTime at = watch.run.at(history.time_s[j]);
      watch.add("dew", "dew", CautionLevel::note, watch.zones[i].name, at,
                fmt::format("the surface is at the dew point about {}: dew keeps it wet and the "
                            "sheen will not go by itself",
                            watch.clock(at)),
                "common practice");
      break;
    }
  }
}

void watch_dark(Watch& watch) {
  for (const ZonePlan& zone : watch.zones) {
    const auto dark = work_in_the_dark(watch, zone);
    if (!dark) continue;
    const OperationWindow* last = last_plastic_window(zone.whole);
    const bool by_day_until_then = watch.sun.kind == SunTimes::Kind::ordinary &&
                                   dark->from == watch.sun.set &&
                                   seconds_between(zone.placed.start, dark->from) > evening_s &&
                                   *last->open_all_over <= dark->to;
    if (by_day_until_then) {
      watch.add("dark", "dark before the last work", CautionLevel::caution, zone.name, dark->from,
                fmt::format("the sun sets {}, before the {} is ready all over ({}): start earlier "
                            "or bring lights",
                            watch.clock(dark->from), operation_words(last->operation),
                            watch.clock(*last->open_all_over)),
                "common practice");
    } else {
      watch.add("dark", "work in the dark", CautionLevel::caution, zone.name, dark->from,
                fmt::format("this work is in the dark, from {} to {}: bring lights",
                            watch.pour_clock(dark->from), watch.pour_clock(dark->to)),
                "common practice", dark->to);
    }
  }
}

void watch_covers(Watch& watch) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const ZonePlan& zone = watch.zones[i];
    for (const Cover& cover : covers_on(watch.job.zones[i], watch.job.pour)) {
      const auto under = work_within(zone, cover.from, cover.to);
      if (!under) continue;
      watch.add(
          "cover_in_the_way", "cover in the way", CautionLevel::caution, zone.name, under->from,
          fmt::format("the {} is set to be on from {} to {}, while it is worked (from {} to "
                      "{}), and the plan counts it as on: lay it after the last work, or take "
                      "it off first",
                      cover_words(cover.kind), watch.pour_clock(cover.from),
                      watch.pour_clock(cover.to), watch.pour_clock(under->from),
                      watch.pour_clock(under->to)),
          "common practice", under->to);
    }
  }
}

void watch_forecast(Watch& watch) {
  if (watch.forecast_age_h && *watch.forecast_age_h > watch.practice.limits.forecast_old_h) {
    watch.add("forecast_old", "old forecast", CautionLevel::caution, {}, std::nullopt,
              fmt::format("the forecast is {:.0f} h old: fetch a new one before you decide",
                          *watch.forecast_age_h),
              "common practice");
  }
  if (!watch.run.forecast_cut_short) return;
  const UtcTime end = watch.run.at(watch.run.weather.grid.end_s());
  if (const std::string missing = first_missing(watch); !missing.empty()) {
    watch.add("forecast_short", "forecast too short", CautionLevel::caution, {}, end,
              fmt::format("the forecast ends {}, before {}: fetch again on the morning of the pour",
                          watch.day_and_clock(end), missing),
              "worked out from this plan");
    return;
  }
  const std::string later = left_for_later(watch);
  if (later.empty()) return;
  watch.add("work_after_forecast", "after the forecast's end", CautionLevel::note, {}, end,
            fmt::format("after the forecast's end, {}: {}. A later forecast tells when",
                        watch.day_and_clock(end), later),
            "worked out from this plan");
}

}  // namespace slabtide
