#include "slabtide/day/plan/cautions.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "caution_watch.h"
#include "saw_cautions.h"
#include "slab_cautions.h"
#include "weather_cautions.h"

namespace slabtide {

namespace {

void add_standing_notes(Watch& watch) {
  watch.add("wet_cement", "wet cement", CautionLevel::note, {}, std::nullopt,
            "wet cement burns skin and eyes (pH 12-13): gloves, boots and eye protection, wash "
            "it off at once",
            "common practice");
  watch.add("silica", "silica dust", CautionLevel::note, {}, std::nullopt,
            "sawing makes silica dust: water to the blade or a shroud with a vacuum; outdoors, a "
            "handheld saw over 4 h a shift needs a respirator (APF 10)",
            "OSHA 29 CFR 1926.1153 Table 1, published");
  add_saw_notes(watch);
  watch.add("licensed_practice", "estimates only", CautionLevel::note, {}, std::nullopt,
            "these times are estimates: the slab decides. Structural slabs, local codes and the "
            "mix supplier's word come before them",
            "common practice");
}

}  // namespace

Steps steps_between(const TimeGrid& grid, UtcTime from, UtcTime to) {
  const double first = std::max(0.0, seconds_between(grid.start, from) / grid.step_s);
  const double last = std::max(0.0, seconds_between(grid.start, to) / grid.step_s);
  const auto clamp = [&grid](double step) {
    return std::min(grid.count, static_cast<std::size_t>(std::ceil(step)));
  };
  return {clamp(first), clamp(last)};
}

PlasticSpan plastic_span(const Watch& watch) {
  PlasticSpan span{watch.zones.front().placed.start, watch.zones.front().placed.end};
  for (const ZonePlan& zone : watch.zones) {
    span.from = std::min(span.from, zone.placed.start);
    span.to = std::max(span.to,
                       zone.whole.final_set.value_or(watch.run.at(watch.run.weather.grid.end_s())));
  }
  return span;
}

std::vector<Caution> find_cautions(const Job& job, const PourRun& run, const DayPlan& plan,
                                   const Practice& practice, std::optional<double> forecast_age_h) {
  Watch watch{job, run, plan.zones, plan.cuts, plan.crew, plan.sun, practice, forecast_age_h, {}};
  constexpr std::array rules{watch_concrete_temperature,
                             watch_cold,
                             watch_ground,
                             watch_freezing,
                             watch_evaporation,
                             watch_hot_weather,
                             watch_dry_air,
                             watch_wind,
                             watch_tops,
                             watch_rain,
                             watch_dew,
                             watch_dark,
                             watch_covers,
                             watch_windows,
                             watch_crew,
                             watch_joints,
                             watch_saws,
                             watch_loads,
                             watch_forecast};
  for (const auto rule : rules) rule(watch);
  std::stable_sort(watch.found.begin(), watch.found.end(),
                   [](const Caution& a, const Caution& b) { return a.at < b.at; });
  add_standing_notes(watch);
  return std::move(watch.found);
}

}  // namespace slabtide
