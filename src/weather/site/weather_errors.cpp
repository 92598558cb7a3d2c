#include "slabtide/weather/site/weather_errors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "slabtide/core/units.h"
#include "slabtide/weather/air/moist_air.h"
#include "weather/sky/irradiance.h"
#include "weather/sky/sky.h"

namespace slabtide {
namespace {

constexpr double max_growth = 4.0;  // ours

bool all_finite(const WeatherErrors& e) {
  const std::array values{e.air_k,          e.night_air_k,    e.dew_point_k,     e.wind_log,
                          e.cloud_fraction, e.wind_ratio_log, e.lead_at_start_h, e.growth_per_h};
  return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

/// Replaces the sunlight at instant `i` by that under `cloud`.
void change_light(SiteWeather& weather, std::size_t i, double cloud) {
  const double global_w_m2 = weather.beam_horizontal_w_m2[i] + weather.diffuse_w_m2[i];
  if (!(global_w_m2 > 0.0) || cloud == weather.cloud_fraction[i]) return;
  const double cos_zenith = std::sin(weather.sun_elevation_deg[i] * radians_per_degree);
  const double max_w_m2 =
      std::max(global_w_m2, clear_sky_w_m2(cos_zenith, weather.air_pressure_pa));
  const double changed_w_m2 =
      global_w_m2 * cloud_transmission(cloud) / cloud_transmission(weather.cloud_fraction[i]);
  const SplitIrradiance light =
      split_irradiance(std::min(changed_w_m2, max_w_m2), cos_zenith, weather.sun_distance_au);
  weather.beam_horizontal_w_m2[i] = light.beam_horizontal_w_m2;
  weather.diffuse_w_m2[i] = light.diffuse_w_m2;
}

double growth_at(const WeatherErrors& errors, const SiteWeather& weather, std::size_t i) {
  return error_growth(errors, static_cast<double>(i) * weather.grid.step_s / seconds_per_hour);
}

/// 0 by day, 1 by night, between them in twilight.
double night_fraction(double sun_elevation_deg) {
  constexpr double twilight_deg = 10.0;
  return std::clamp(0.5 - 0.5 * sun_elevation_deg / twilight_deg, 0.0, 1.0);
}

}  // namespace

double error_growth(const WeatherErrors& errors, double hours_from_start) {
  const double lead_h = std::max(0.0, errors.lead_at_start_h + hours_from_start);
  return std::min(max_growth, 1.0 + errors.growth_per_h * lead_h);
}

double air_error_k(const WeatherErrors& errors, const SiteWeather& weather, std::size_t i) {
  const double own_k = errors.night_air_k == 0.0
                           ? 0.0
                           : night_fraction(weather.sun_elevation_deg[i]) * errors.night_air_k;
  return growth_at(errors, weather, i) * (errors.air_k + own_k);
}

double wind_error_log(const WeatherErrors& errors, const SiteWeather& weather, std::size_t i) {
  return growth_at(errors, weather, i) * errors.wind_log + errors.wind_ratio_log;
}

SiteWeather with_errors(const SiteWeather& weather, const WeatherErrors& errors) {
  if (!all_finite(errors)) throw std::invalid_argument("weather: an error is not finite");
  SiteWeather result = weather;
  result.wind_ratio *= std::exp(errors.wind_ratio_log);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double growth = growth_at(errors, weather, i);
    const double cloud =
        std::clamp(weather.cloud_fraction[i] + growth * errors.cloud_fraction, 0.0, 1.0);
    change_light(result, i, cloud);
    result.cloud_fraction[i] = cloud;
    result.air_c[i] += air_error_k(errors, weather, i);
    result.dew_point_c[i] =
        std::min(result.air_c[i], weather.dew_point_c[i] + growth * errors.dew_point_k);
    result.vapour_pressure_pa[i] = vapour_pressure_pa(result.dew_point_c[i]);
    result.sky_emissivity[i] = sky_emissivity(result.dew_point_c[i], cloud);
    result.wind_slab_m_s[i] *= std::exp(wind_error_log(errors, weather, i));
  }
  return result;
}

CellExposure relit(const CellExposure& exposure, const SiteWeather& from, const SiteWeather& to) {
  const std::size_t count = exposure.shortwave_w_m2.size();
  if (count != from.grid.count || count != to.grid.count)
    throw std::invalid_argument("weather: light and exposure are not on one grid");
  CellExposure result = exposure;
  for (std::size_t i = 0; i < count; ++i) {
    const double sky_w_m2 = from.diffuse_w_m2[i] * exposure.sky_view;
    const double beam_w_m2 = std::max(0.0, exposure.shortwave_w_m2[i] - sky_w_m2);
    const double had_w_m2 = from.beam_horizontal_w_m2[i];
    const double factor = had_w_m2 > 0.0 ? to.beam_horizontal_w_m2[i] / had_w_m2 : 0.0;
    result.shortwave_w_m2[i] = factor * beam_w_m2 + to.diffuse_w_m2[i] * exposure.sky_view;
  }
  return result;
}

SiteWeather first_instants(const SiteWeather& weather, std::size_t count) {
  SiteWeather result = weather;
  result.grid.count = std::min(count, weather.grid.count);
  for (std::vector<double>* each :
       {&result.air_c, &result.dew_point_c, &result.vapour_pressure_pa, &result.wind_slab_m_s,
        &result.cloud_fraction, &result.sky_emissivity, &result.beam_horizontal_w_m2,
        &result.diffuse_w_m2, &result.sun_elevation_deg, &result.sun_azimuth_deg, &result.rain_mm_h,
        &result.rain_chance}) {
    each->resize(result.grid.count);
  }
  result.thunder.resize(result.grid.count);
  return result;
}

CellExposure first_instants(const CellExposure& exposure, std::size_t count) {
  CellExposure result = exposure;
  const std::size_t kept = std::min(count, exposure.shortwave_w_m2.size());
  result.shortwave_w_m2.resize(kept);
  result.sunlit_fraction.resize(kept);
  return result;
}

}  // namespace slabtide
