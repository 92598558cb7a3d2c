#pragma once

#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// How far the actual weather differs from the forecast. All are errors of a forecast just
/// issued, but for that of the site's shelter; they grow with lead time by a factor of 1 + growth x
/// hours since issue, at most four (ours: beyond that a forecast is no better than the season's
/// mean).
struct WeatherErrors {
  double air_k = 0.0;
  double night_air_k = 0.0;  ///< beside `air_k`, when the sun is down
  double dew_point_k = 0.0;
  double wind_log = 0.0;  ///< natural logarithm of actual over forecast wind
  double cloud_fraction = 0.0;
  double wind_ratio_log = 0.0;   ///< natural logarithm of actual over planned wind_ratio
  double lead_at_start_h = 0.0;  ///< from the forecast's issue to the grid's start
  double growth_per_h = 0.0;
};

/// The factor by which an error has grown since the forecast was issued.
double error_growth(const WeatherErrors& errors, double hours_from_start);

/// What is wrong with the air temperature and with the logarithm of the wind at the slab at
/// instant `i`. The night's own part comes in from a sun 10 degrees high to one 10 degrees under
/// the horizon (ours).
double air_error_k(const WeatherErrors& errors, const SiteWeather& weather, std::size_t i);
double wind_error_log(const WeatherErrors& errors, const SiteWeather& weather, std::size_t i);

/// The weather with these errors added.
///
/// Idealises: each error keeps its sign all day, but the air at night has one of its own. The dew
/// point stays at or below the air temperature, cloud within 0 to 1. Sunlight follows the cloud
/// (Kasten & Czeplak, irradiance.h) but never exceeds the clear sky's or the forecast's own,
/// whichever is more; it is then split again. Status: ours. Error: std::invalid_argument for errors
/// that are not finite.
SiteWeather with_errors(const SiteWeather& weather, const WeatherErrors& errors);

/// A place's light under `to`, computed from its light under `from`: its beam scales with the beam
/// and its sky light with the sky light.
/// Error: std::invalid_argument if the three are not on the same grid.
CellExposure relit(const CellExposure& exposure, const SiteWeather& from, const SiteWeather& to);

/// The first `count` instants of the weather, and of what a place sees under it.
SiteWeather first_instants(const SiteWeather& weather, std::size_t count);
CellExposure first_instants(const CellExposure& exposure, std::size_t count);

}  // namespace slabtide
