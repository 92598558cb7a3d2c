#include "slabtide/day/plan/weather_risk.h"

#include <algorithm>

#include "caution_watch.h"
#include "slabtide/core/units.h"
#include "slabtide/day/plan/caution.h"

namespace slabtide {

namespace {

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

}  // namespace slabtide
