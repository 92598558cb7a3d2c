#pragma once

#include <optional>
#include <string>
#include <vector>

#include "job/model/wording.h"
#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/joints/cut_plan.h"
#include "slabtide/day/plan/caution.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/weather/sky/sun.h"

// Shared by the rules for the cautions. Each rule examines a Watch and adds what it finds.

namespace slabtide {

/// What the rules examine, and where they add what they find.
struct Watch {
  const Job& job;
  const PourRun& run;
  const std::vector<ZonePlan>& zones;  // in the order of job.zones
  const CutPlan& cuts;
  const CrewPlan& crew;
  const SunTimes& sun;
  const Practice& practice;
  std::optional<double> forecast_age_h;  // since it was issued, if known
  std::vector<Caution> found = {};

  void add(std::string code, std::string title, CautionLevel level, std::string zone,
           std::optional<UtcTime> at, std::string text, std::string source,
           std::optional<UtcTime> until = std::nullopt) {
    const Loss loss = loss_of(code);
    found.push_back({.code = std::move(code),
                     .title = std::move(title),
                     .level = level,
                     .loss = loss,
                     .zone = std::move(zone),
                     .at = at,
                     .until = until,
                     .text = std::move(text),
                     .source = std::move(source)});
  }
  std::string clock(UtcTime time) const { return clock_of(job).time(time); }
  std::string day_and_clock(UtcTime time) const { return clock_of(job).weekday_time(time); }
  /// The clock time, with its weekday if it is on another day than the pour's.
  std::string pour_clock(UtcTime time) const {
    return clock_of(job).time_seen_from(job.pour.date, time);
  }
  std::string temperature(double c) const { return temperature_words(c, job.units); }
};

/// The range of grid entries between two instants.
struct Steps {
  std::size_t first = 0;
  std::size_t end = 0;
};

Steps steps_between(const TimeGrid& grid, UtcTime from, UtcTime to);

/// From placing of the first zone to final set of the last, or to the end of the weather.
struct PlasticSpan {
  UtcTime from;
  UtcTime to;
};

PlasticSpan plastic_span(const PourRun& run, const std::vector<ZonePlan>& zones);
inline PlasticSpan plastic_span(const Watch& watch) { return plastic_span(watch.run, watch.zones); }

/// The first span of consecutive grid entries in `steps` for which `holds(entry)` is true; empty if
/// there is none.
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

}  // namespace slabtide
