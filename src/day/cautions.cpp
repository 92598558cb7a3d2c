#include "slabtide/day/cautions.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "slabtide/job/wording.h"

namespace slabtide {

namespace {

constexpr double seconds_per_minute = 60.0;
constexpr double seconds_per_hour = 3600.0;
constexpr double freezing_c = 0.0;
/// How long after placing the air is looked at for cold: the first night (ours).
constexpr double cold_watch_h = 24.0;

/// What the rules look at, and where they put what they find.
struct Watch {
  const Job& job;
  const PourRun& run;
  const std::vector<ZonePlan>& zones;
  const SunTimes& sun;
  const Practice& practice;
  std::vector<Caution> found;

  void add(std::string code, CautionLevel level, std::string zone, std::optional<UtcTime> at,
           std::string text, std::string source) {
    found.push_back(
        {std::move(code), level, std::move(zone), at, std::move(text), std::move(source)});
  }
  std::string clock(UtcTime time) const { return clock_time(time, job.site.time_zone); }
  std::string temperature(double c) const { return temperature_words(c, job.units); }
};

/// The grid's entries from one instant to another.
struct Steps {
  std::size_t first = 0;
  std::size_t end = 0;
};

Steps steps_between(const TimeGrid& grid, UtcTime from, UtcTime to) {
  const double first = std::max(0.0, seconds_between(grid.start, from) / grid.step_s);
  const double last = std::max(0.0, seconds_between(grid.start, to) / grid.step_s);
  const auto clamp = [&grid](double step) {
    return std::min(grid.count, static_cast<std::size_t>(std::ceil(step)));
  };
  return {clamp(first), clamp(last)};
}

/// Placing of the first zone to final set of the last, or to the end of the weather.
struct PlasticSpan {
  UtcTime from;
  UtcTime to;
};

PlasticSpan plastic_span(const Watch& watch) {
  PlasticSpan span{watch.zones.front().placed.start, watch.zones.front().placed.end};
  for (const ZonePlan& zone : watch.zones) {
    span.from = std::min(span.from, zone.placed.start);
    span.to = std::max(span.to,
                       zone.whole.final_set.value_or(watch.run.at(watch.run.weather.grid.end_s())));
  }
  return span;
}

void watch_concrete_temperature(Watch& watch) {
  const WeatherLimits& limits = watch.practice.limits;
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const double discharge_c = watch.run.mix_of(watch.run.zones[i]).discharge_c;
    if (discharge_c <= limits.hot_concrete_c) continue;
    watch.add("hot_concrete", CautionLevel::stop, watch.zones[i].name, watch.zones[i].placed.start,
              fmt::format("concrete at {} is over the {} limit at discharge: order it cooler "
                          "(chilled water or ice, shaded aggregate) or pour at another hour",
                          watch.temperature(discharge_c), watch.temperature(limits.hot_concrete_c)),
              "ACI 305.1-14, published");
  }
}

void watch_cold(Watch& watch) {
  const WeatherLimits& limits = watch.practice.limits;
  const SiteWeather& weather = watch.run.weather;
  const PlasticSpan span = plastic_span(watch);
  const Steps steps =
      steps_between(weather.grid, span.from,
                    after_seconds(watch.zones.back().placed.end, cold_watch_h * seconds_per_hour));
  for (std::size_t k = steps.first; k < steps.end; ++k) {
    if (weather.air_c[k] >= limits.cold_air_c) continue;
    const UtcTime at = watch.run.at(static_cast<double>(k) * weather.grid.step_s);
    watch.add("cold_weather", CautionLevel::caution, {}, at,
              fmt::format("air under {} from {}: cold-weather rules hold. Blankets at hand, "
                          "concrete at {} or more when placed and kept there, no frost before {}",
                          watch.temperature(limits.cold_air_c), watch.clock(at),
                          watch.temperature(limits.cold_concrete_c),
                          strength_words(limits.protect_until_psi, watch.job.units)),
              "ACI 306R-10, published");
    if (watch.run.mix_of(watch.run.zones.front()).discharge_c < limits.cold_concrete_c) {
      watch.add(
          "cold_concrete", CautionLevel::caution, {}, watch.zones.front().placed.start,
          fmt::format("concrete at {} is under the {} that cold weather asks of a thin "
                      "section: order it with warm water",
                      watch.temperature(watch.run.mix_of(watch.run.zones.front()).discharge_c),
                      watch.temperature(limits.cold_concrete_c)),
          "ACI 306R-10, published");
    }
    return;
  }
}

void watch_ground(Watch& watch) {
  if (watch.run.ground_c > freezing_c) return;
  watch.add("frozen_ground", CautionLevel::stop, {}, watch.zones.front().placed.start,
            fmt::format("the ground is taken to be at {}: never pour on frozen ground. Thaw it, "
                        "keep it covered, measure it",
                        watch.temperature(watch.run.ground_c)),
            "ACI 306R-10, published");
}

/// The first instant at which any cell's surface freezes while it is weaker than the limit.
std::optional<double> freezes_s(const ZoneRun& zone, const PourRun& run, double until_psi) {
  std::optional<double> first;
  for (const CellRun& cell : zone.cells) {
    const ColumnHistory& history = run.histories[cell.history];
    for (std::size_t i = 0; i < history.time_s.size(); ++i) {
      if (history.strength_psi[i] >= until_psi) break;
      if (history.surface_c[i] <= freezing_c) {
        first = std::min(first.value_or(history.time_s[i]), history.time_s[i]);
        break;
      }
    }
  }
  return first;
}

void watch_freezing(Watch& watch) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const auto at_s =
        freezes_s(watch.run.zones[i], watch.run, watch.practice.limits.protect_until_psi);
    if (!at_s) continue;
    const UtcTime at = watch.run.at(*at_s);
    watch.add("freezing", CautionLevel::stop, watch.zones[i].name, at,
              fmt::format("the surface freezes about {} before it has {}: blankets on well "
                          "before that, warmer concrete or another day",
                          watch.clock(at),
                          strength_words(watch.practice.limits.protect_until_psi, watch.job.units)),
              "ACI 306R-10, published");
  }
}

void watch_evaporation(Watch& watch) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const PartPlan& part = watch.zones[i].whole;
    const EvaporationFlags& flags = watch.practice.evaporation;
    const double factor =
        watch.run.mix_of(watch.run.zones[i]).hardly_bleeds ? flags.hardly_bleeds_factor : 1.0;
    const double peak = part.peak_evaporation_kg_m2_h;
    if (peak < factor * flags.caution_kg_m2_h) continue;
    const bool high = peak >= factor * flags.precautions_kg_m2_h;
    const std::string rate = evaporation_words(peak, watch.job.units);
    watch.add(high ? "evaporation_precautions" : "evaporation_caution", CautionLevel::caution,
              watch.zones[i].name, part.peak_evaporation_at,
              high ? fmt::format("evaporation reaches {} about {}: take precautions, or the top "
                                 "cracks while plastic. Windbreak, shade, fog or an evaporation "
                                 "film at hand, finish in small areas",
                                 rate, watch.clock(part.peak_evaporation_at))
                   : fmt::format("evaporation reaches {} about {}: watch the sheen, keep fog or "
                                 "an evaporation film at hand",
                                 rate, watch.clock(part.peak_evaporation_at)),
              "FHWA-HRT-05-038; ACI 305, published; the rate itself is good to about 40 %");
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
      watch.add("hot_weather", CautionLevel::caution, {}, at,
                fmt::format("hot weather from {}: air over {} and fast drying together. Damp the "
                            "base, shade the crew and the load, no water added to the mix for "
                            "slump",
                            watch.clock(at), watch.temperature(watch.practice.limits.hot_air_c)),
                "ACI 305.1-14, published");
      return;
    }
  }
}

void watch_tops(Watch& watch) {
  for (const ZonePlan& zone : watch.zones) {
    if (zone.whole.early_sheen_at) {
      watch.add("early_sheen", CautionLevel::caution, zone.name, zone.whole.early_sheen_at,
                fmt::format("the top looks dry from {} while water still rises: it is not ready. "
                            "Closing it now traps bleed water under a crust",
                            watch.clock(*zone.whole.early_sheen_at)),
                "Concrete Construction, published");
    }
    if (zone.whole.crust_at) {
      watch.add("crust", CautionLevel::caution, zone.name, zone.whole.crust_at,
                fmt::format("about {} the top is stiff over a soft body: stamps tear a crust. "
                            "Shade it, break the wind, fog lightly",
                            watch.clock(*zone.whole.crust_at)),
                "ours; no published limit");
    }
  }
}

void watch_rain(Watch& watch) {
  const SiteWeather& weather = watch.run.weather;
  const WeatherLimits& limits = watch.practice.limits;
  const PlasticSpan span = plastic_span(watch);
  const Steps steps = steps_between(weather.grid, span.from, span.to);
  bool rain_said = false;
  bool thunder_said = false;
  for (std::size_t k = steps.first; k < steps.end; ++k) {
    const UtcTime at = watch.run.at(static_cast<double>(k) * weather.grid.step_s);
    const bool falls = weather.rain_mm_h[k] >= limits.rain_mm_h;
    if (!rain_said && (falls || weather.rain_chance[k] >= limits.rain_chance)) {
      rain_said = true;
      const double percent = 100.0 * weather.rain_chance[k];
      const std::string chance =
          percent > 0.0 ? fmt::format(" ({:.0f} % chance)", percent) : std::string();
      watch.add("rain", CautionLevel::caution, {}, at,
                fmt::format("rain about {}{} before the slab has set: plastic sheet and battens "
                            "at hand, or another day",
                            watch.clock(at), chance),
                "common practice");
    }
    if (!thunder_said && weather.thunder[k] != 0) {
      thunder_said = true;
      watch.add("thunder", CautionLevel::stop, {}, at,
                fmt::format("thunder forecast about {} with the slab still soft: hands off long "
                            "tools and pumps, people inside; plan another hour",
                            watch.clock(at)),
                "common practice");
    }
  }
}

void watch_dew(Watch& watch) {
  const SiteWeather& weather = watch.run.weather;
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const ColumnHistory& history = watch.run.histories[watch.run.zones[i].cells.front().history];
    for (std::size_t j = 0; j < history.time_s.size(); ++j) {
      if (history.resistance_middle_psi[j] >= watch.practice.set.final_set_psi) break;
      const auto k = std::min(weather.grid.count - 1,
                              static_cast<std::size_t>(history.time_s[j] / weather.grid.step_s));
      if (history.surface_c[j] > weather.dew_point_c[k]) continue;
      const UtcTime at = watch.run.at(history.time_s[j]);
      watch.add("dew", CautionLevel::note, watch.zones[i].name, at,
                fmt::format("the surface is at the dew point about {}: dew keeps it wet and the "
                            "sheen will not go by itself",
                            watch.clock(at)),
                "common practice");
      break;
    }
  }
}

const OperationWindow* last_plastic_window(const PartPlan& part) {
  const OperationWindow* last = nullptr;
  for (const OperationWindow& window : part.windows) {
    if (window.operation >= Operation::saw_dry || !window.open_all_over) continue;
    if (last == nullptr || *window.open_all_over > *last->open_all_over) last = &window;
  }
  return last;
}

void watch_dark(Watch& watch) {
  if (watch.sun.kind != SunTimes::Kind::ordinary) return;
  for (const ZonePlan& zone : watch.zones) {
    const OperationWindow* last = last_plastic_window(zone.whole);
    if (last == nullptr || *last->open_all_over < watch.sun.set) continue;
    watch.add("dark", CautionLevel::caution, zone.name, watch.sun.set,
              fmt::format("the sun sets {}, before the {} is ready all over ({}): start earlier "
                          "or bring lights",
                          watch.clock(watch.sun.set), operation_words(last->operation),
                          watch.clock(*last->open_all_over)),
              "common practice");
  }
}

void watch_windows_of(Watch& watch, const ZonePlan& zone, const PartPlan& part) {
  const std::string where = part.name.empty() ? zone.name : zone.name + ", " + part.name;
  for (const OperationWindow& window : part.windows) {
    if (window.operation >= Operation::saw_dry || !window.opens || !window.closes) continue;
    const double minutes = *window.minutes();
    if (minutes <= 0.0) {
      watch.add("no_window", CautionLevel::stop, where, window.opens,
                fmt::format("no good time to {}: stiff by {} and the sheen stays to {}. Less "
                            "bleed water, a retarder, or a warmer and drier hour",
                            operation_words(window.operation), watch.clock(*window.closes),
                            watch.clock(*window.opens)),
                "method of this program");
    } else if (minutes < watch.practice.limits.short_window_min) {
      watch.add("short_window", CautionLevel::caution, where, window.opens,
                fmt::format("only {:.0f} min for the {} from {}: have everybody there, work in "
                            "small areas, or slow it with a retarder or shade",
                            minutes, operation_words(window.operation), watch.clock(*window.opens)),
                "method of this program");
    }
  }
}

void watch_windows(Watch& watch) {
  for (const ZonePlan& zone : watch.zones) {
    if (zone.parts.empty()) watch_windows_of(watch, zone, zone.whole);
    for (const PartPlan& part : zone.parts) watch_windows_of(watch, zone, part);
  }
}

std::string_view saw_words(SawKind kind) {
  return kind == SawKind::early_entry ? "early-entry saw" : "wet saw";
}

void watch_saws(Watch& watch) {
  for (const ZonePlan& zone : watch.zones) {
    bool in_time = false;
    bool any = false;
    for (const SawPlan& saw : zone.saws) {
      any = any || saw.on_hand;
      in_time = in_time || (saw.on_hand && !saw.too_late);
    }
    if (!any || in_time) continue;
    const auto& saws = zone.saws;
    const auto latest = saws.front().latest;
    const auto helps = std::find_if(
        saws.begin(), saws.end(), [](const SawPlan& saw) { return !saw.on_hand && !saw.too_late; });
    const std::string cure =
        helps == saws.end()
            ? std::string("tool the joints while the concrete is plastic")
            : fmt::format("get an {}, or tool the joints while the concrete is plastic",
                          saw_words(helps->kind));
    watch.add("saw_too_late", CautionLevel::stop, zone.name, latest,
              fmt::format("the saw on hand cannot cut before the slab wants to crack ({}): {}",
                          latest ? watch.clock(*latest) : std::string("tonight"), cure),
              "method of this program; ACI 302.1R");
  }
}

void watch_forecast(Watch& watch) {
  if (!watch.run.forecast_cut_short) return;
  const UtcTime end = watch.run.at(watch.run.weather.grid.end_s());
  watch.add(
      "forecast_short", CautionLevel::caution, {}, end,
      fmt::format("the weather given ends {} {}: what comes later is not computed",
                  long_date(watch.job.site.time_zone.local_from_utc(end).date()), watch.clock(end)),
      "method of this program");
}

void add_standing_notes(Watch& watch) {
  watch.add("wet_cement", CautionLevel::note, {}, std::nullopt,
            "wet cement burns skin and eyes (pH 12-13): gloves, boots and eye protection, wash "
            "it off at once",
            "common practice");
  watch.add("silica", CautionLevel::note, {}, std::nullopt,
            "sawing makes silica dust: water to the blade or a shroud with a vacuum; outdoors, a "
            "handheld saw over 4 h a shift needs a respirator (APF 10)",
            "OSHA 29 CFR 1926.1153 Table 1, published");
  watch.add("licensed_practice", CautionLevel::note, {}, std::nullopt,
            "these times are estimates: the slab decides. Structural slabs, local codes and the "
            "mix supplier's word come before them",
            "common practice");
}

}  // namespace

std::vector<Caution> find_cautions(const Job& job, const PourRun& run,
                                   const std::vector<ZonePlan>& zones, const SunTimes& sun,
                                   const Practice& practice) {
  Watch watch{job, run, zones, sun, practice, {}};
  watch_concrete_temperature(watch);
  watch_cold(watch);
  watch_ground(watch);
  watch_freezing(watch);
  watch_evaporation(watch);
  watch_hot_weather(watch);
  watch_tops(watch);
  watch_rain(watch);
  watch_dew(watch);
  watch_dark(watch);
  watch_windows(watch);
  watch_saws(watch);
  watch_forecast(watch);
  std::stable_sort(watch.found.begin(), watch.found.end(),
                   [](const Caution& a, const Caution& b) { return a.at < b.at; });
  add_standing_notes(watch);
  return std::move(watch.found);
}

}  // namespace slabtide
