#include "slabtide/weather/site/site_weather.h"

#include <cmath>
#include <stdexcept>

#include "slabtide/core/units.h"
#include "slabtide/weather/air/moist_air.h"
#include "slabtide/weather/sky/sun.h"
#include "weather/air/wind.h"
#include "weather/sky/irradiance.h"
#include "weather/sky/sky.h"

namespace slabtide {
namespace {

void require_grid(const TimeGrid& grid) {
  if (grid.start.is_special() || !(grid.step_s > 0.0 && std::isfinite(grid.step_s)))
    throw std::invalid_argument("site weather: the grid has no start or no step");
}

void add_air(SiteWeather& site, const WeatherSample& sample) {
  site.air_c.push_back(sample.air_c);
  site.dew_point_c.push_back(sample.dew_point_c);
  site.vapour_pressure_pa.push_back(vapour_pressure_pa(sample.dew_point_c));
  site.wind_slab_m_s.push_back(sample.wind_10m_m_s * site.wind_ratio);
  site.cloud_fraction.push_back(sample.cloud_fraction);
  site.sky_emissivity.push_back(sky_emissivity(sample.dew_point_c, sample.cloud_fraction));
  site.rain_mm_h.push_back(sample.rain_mm_h);
  site.rain_chance.push_back(sample.rain_chance);
  site.thunder.push_back(sample.thunder ? 1 : 0);
}

/// The forecast's own irradiance if it has it, else the clear sky reduced by cloud.
void add_sun(SiteWeather& site, const WeatherSample& sample, const SunPosition& sun) {
  const double cos_zenith = std::cos(sun.zenith_deg * radians_per_degree);
  const double global_w_m2 = sample.solar_w_m2.value_or(
      clear_sky_w_m2(cos_zenith, site.air_pressure_pa) * cloud_transmission(sample.cloud_fraction));
  const SplitIrradiance light = split_irradiance(global_w_m2, cos_zenith, sun.distance_au);
  site.beam_horizontal_w_m2.push_back(light.beam_horizontal_w_m2);
  site.diffuse_w_m2.push_back(light.diffuse_w_m2);
  site.sun_elevation_deg.push_back(90.0 - sun.zenith_deg);
  site.sun_azimuth_deg.push_back(sun.azimuth_deg);
}

/// Before the series' first instant, the same hour of the first day that it has.
UtcTime told_of(const WeatherSeries& series, UtcTime time) {
  const Duration day = boost::posix_time::hours(24);
  while (time < series.first()) time += day;
  return time;
}

}  // namespace

std::size_t TimeGrid::index_at(double at_s) const {
  if (!(at_s > 0.0)) return 0;
  return at_s < end_s() ? static_cast<std::size_t>(at_s / step_s) : count - 1;
}

SiteWeather site_weather(const Site& site, const WeatherSeries& series, const TimeGrid& grid) {
  require_grid(grid);
  SiteWeather result;
  result.grid = grid;
  result.air_pressure_pa = air_pressure_pa(site.elevation_m);
  result.wind_ratio = wind_ratio(site);
  result.sun_distance_au =
      sun_position(grid.start, site.latitude_deg, site.longitude_deg).distance_au;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const UtcTime time = after_seconds(grid.start, grid.step_s * static_cast<double>(i));
    const WeatherSample sample = series.at(told_of(series, time));
    add_air(result, sample);
    add_sun(result, sample, sun_position(time, site.latitude_deg, site.longitude_deg));
  }
  return result;
}

}  // namespace slabtide
