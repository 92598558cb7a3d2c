#pragma once

#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// How far the actual weather differs from the forecast. All four are errors of a forecast just
/// issued; they grow with lead time by a factor of 1 + growth x hours since issue, at most four
/// (ours: beyond that a forecast is no better than the season's mean).
struct WeatherErrors {
  double air_k = 0.0;
  double dew_point_k = 0.0;
  double wind_log = 0.0;  ///< natural logarithm of actual over forecast wind
  double cloud_fraction = 0.0;
  double lead_at_start_h = 0.0;  ///< from the forecast's issue to the grid's start
  double growth_per_h = 0.0;
};

/// The factor by which an error has grown since the forecast was issued.
double error_growth(const WeatherErrors& errors, double hours_from_start);

/// The weather with these errors added.
///
/// Idealises: each error keeps its sign all day. The dew point stays at or below the air
/// temperature, cloud within 0 to 1. Sunlight follows the cloud (Kasten & Czeplak, irradiance.h)
/// but never exceeds the clear sky's or the forecast's own, whichever is more; it is then split
/// again.
/// Status: ours. Error: std::invalid_argument for errors that are not finite.
SiteWeather with_errors(const SiteWeather& weather, const WeatherErrors& errors);

/// A place's light under `to`, computed from its light under `from`: its beam scales with the beam
/// and its sky light with the sky light.
/// Error: std::invalid_argument if the three are not on the same grid.
CellExposure relit(const CellExposure& exposure, const SiteWeather& from, const SiteWeather& to);

/// The first `count` instants of the weather, and of what a place sees under it.
SiteWeather first_instants(const SiteWeather& weather, std::size_t count);
CellExposure first_instants(const CellExposure& exposure, std::size_t count);

}  // namespace slabtide
