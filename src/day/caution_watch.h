#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/cautions.h"
#include "slabtide/job/wording.h"

// What the rules of the cautions share. Each rule looks at a Watch and adds what it finds.

namespace slabtide {

/// What the rules look at, and where they put what they find.
struct Watch {
  const Job& job;
  const PourRun& run;
  const std::vector<ZonePlan>& zones;
  const SunTimes& sun;
  const Practice& practice;
  std::optional<double> forecast_age_h;
  std::vector<Caution> found;

  void add(std::string code, std::string title, CautionLevel level, std::string zone,
           std::optional<UtcTime> at, std::string text, std::string source,
           std::optional<UtcTime> until = std::nullopt) {
    found.push_back({std::move(code), std::move(title), level, std::move(zone), at, until,
                     std::move(text), std::move(source)});
  }
  std::string clock(UtcTime time) const { return clock_time(time, job.site.time_zone); }
  std::string day_and_clock(UtcTime time) const {
    constexpr std::size_t weekday_letters = 3;
    const TimeZone& zone = job.site.time_zone;
    return long_date(zone.local_from_utc(time).date()).substr(0, weekday_letters) + " " +
           clock_time(time, zone);
  }
  std::string temperature(double c) const { return temperature_words(c, job.units); }
};

/// The grid's entries from one instant to another.
struct Steps {
  std::size_t first = 0;
  std::size_t end = 0;
};

Steps steps_between(const TimeGrid& grid, UtcTime from, UtcTime to);

/// Placing of the first zone to final set of the last, or to the end of the weather.
struct PlasticSpan {
  UtcTime from;
  UtcTime to;
};

PlasticSpan plastic_span(const Watch& watch);

/// The spans of grid entries in `steps` at which `holds(entry)`, joined where they touch.
template <class Holds>
std::optional<PlasticSpan> first_span(const PourRun& run, Steps steps, Holds holds) {
  std::optional<PlasticSpan> span;
  for (std::size_t k = steps.first; k < steps.end; ++k) {
    if (!holds(k)) {
      if (span) return span;
      continue;
    }
    const UtcTime at = run.at(static_cast<double>(k) * run.weather.grid.step_s);
    if (!span) span = PlasticSpan{at, at};
    span->to = at;
  }
  return span;
}

// The rules about the air and the ground: weather_cautions.cpp.
void watch_cold(Watch& watch);
void watch_ground(Watch& watch);
void watch_freezing(Watch& watch);
void watch_hot_weather(Watch& watch);
void watch_dry_air(Watch& watch);
void watch_wind(Watch& watch);
void watch_rain(Watch& watch);
void watch_dew(Watch& watch);
void watch_dark(Watch& watch);
void watch_forecast(Watch& watch);

// The rules about the concrete and the work on it: slab_cautions.cpp.
void watch_concrete_temperature(Watch& watch);
void watch_evaporation(Watch& watch);
void watch_tops(Watch& watch);
void watch_windows(Watch& watch);
void watch_saws(Watch& watch);
void watch_loads(Watch& watch);

}  // namespace slabtide
