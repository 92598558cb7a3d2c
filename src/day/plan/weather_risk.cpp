#include "slabtide/day/plan/weather_risk.h"

#include <algorithm>
#include <limits>

#include "caution_watch.h"
#include "slabtide/core/units.h"
#include "slabtide/day/plan/caution.h"

namespace slabtide {

namespace {

constexpr double frost_c = 0.0;

double max_chance(const PourRun& run, Steps steps) {
  double chance = 0.0;
  for (std::size_t k = steps.first; k < steps.end; ++k) {
    chance = std::max(chance, run.weather.rain_chance[k]);
  }
  return chance;
}

}  // namespace

bool RainRisk::too_often() const {
  return first && (first->chance == 0.0 || first->chance >= lost_too_often_fraction);
}

RainRisk rain_between(const PourRun& run, UtcTime from, UtcTime to, const WeatherLimits& limits) {
  const SiteWeather& weather = run.weather;
  const Steps steps = steps_between(weather.grid, from, to);
  RainRisk risk;
  risk.chance = max_chance(run, steps);
  for (std::size_t k = steps.first; k < steps.end; ++k) {
    risk.amount_mm += weather.rain_mm_h[k] * weather.grid.step_s / seconds_per_hour;
  }
  const auto wet = first_span(run, steps, [&](std::size_t k) {
    return weather.rain_mm_h[k] >= limits.rain_mm_h || weather.rain_chance[k] >= limits.rain_chance;
  });
  if (wet) {
    const UtcTime past_it = after_seconds(wet->to, weather.grid.step_s);
    const double chance = max_chance(run, steps_between(weather.grid, wet->from, past_it));
    risk.first = RainSpell{wet->from, wet->to, chance};
  }
  return risk;
}

FrostRisk frost_on_young(const ZoneRun& zone, const PourRun& run, const WeatherLimits& limits) {
  FrostRisk risk;
  risk.min_surface_c = std::numeric_limits<double>::infinity();
  for (const CellRun& cell : zone.cells) {
    const ColumnHistory& history = run.histories[cell.history];
    bool frozen = false;
    for (std::size_t i = 0; i < history.time_s.size(); ++i) {
      if (history.strength_psi[i] >= limits.protect_until_psi) break;
      risk.min_surface_c = std::min(risk.min_surface_c, history.surface_c[i]);
      if (frozen || history.surface_c[i] > frost_c) continue;
      frozen = true;
      const UtcTime at = run.at(history.time_s[i]);
      risk.at = std::min(risk.at.value_or(at), at);
    }
  }
  return risk;
}

}  // namespace slabtide
