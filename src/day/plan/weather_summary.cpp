#include "slabtide/day/plan/weather_summary.h"

#include <algorithm>

#include "slabtide/core/units.h"

namespace slabtide {

WeatherSummary summarise_weather(const PourRun& run) {
  const SiteWeather& weather = run.weather;
  const auto day_steps =
      static_cast<std::size_t>(hours_per_day * seconds_per_hour / weather.grid.step_s);
  const std::size_t count = std::min(weather.grid.count, day_steps);
  WeatherSummary summary;
  summary.high_c = summary.low_c = weather.air_c.front();
  double cloud = 0.0;
  double daylight_steps = 0.0;
  for (std::size_t k = 0; k < count; ++k) {
    summary.high_c = std::max(summary.high_c, weather.air_c[k]);
    summary.low_c = std::min(summary.low_c, weather.air_c[k]);
    summary.mean_wind_10m_m_s += weather.wind_slab_m_s[k] / weather.wind_ratio;
    if (weather.sun_elevation_deg[k] > 0.0) {
      cloud += weather.cloud_fraction[k];
      daylight_steps += 1.0;
    }
  }
  summary.mean_wind_10m_m_s /= static_cast<double>(count);
  summary.daylight_cloud_fraction = daylight_steps > 0.0 ? cloud / daylight_steps : 0.0;
  return summary;
}

}  // namespace slabtide
