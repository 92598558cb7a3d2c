#pragma once

#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// How far the weather that comes is off what was forecast. All four grow with lead time: they
/// are errors of a forecast just issued, times 1 + growth x hours since its issue, at most four
/// times (ours: past that a forecast is no better than the season's mean).
struct WeatherErrors {
  double air_k = 0.0;
  double dew_point_k = 0.0;
  double wind_log = 0.0;  ///< natural logarithm of the wind that comes over the one forecast
  double cloud_fraction = 0.0;
  double lead_at_start_h = 0.0;  ///< from the forecast's issue to the grid's start
  double growth_per_h = 0.0;
};

/// What an error has grown to, times itself as the forecast was issued.
double error_growth(const WeatherErrors& errors, double hours_from_start);

/// The weather with these errors in it.
///
/// Idealises: each error keeps its sign all day. The dew point stays at or under the air, cloud
/// within 0 to 1. Sunlight goes with the cloud (Kasten & Czeplak, irradiance.h), never over the
/// clear sky's or the forecast's own, whichever is more, and is split again.
/// Status: ours. Error: std::invalid_argument for errors that are not finite.
SiteWeather with_errors(const SiteWeather& weather, const WeatherErrors& errors);

/// A place's light under `to`, which it had under `from`: its beam goes with the beam, its sky
/// light with the sky's.
/// Error: std::invalid_argument where the three are not on one grid.
CellExposure relit(const CellExposure& exposure, const SiteWeather& from, const SiteWeather& to);

/// The first `count` instants of a weather, and of what a place sees under it.
SiteWeather first_instants(const SiteWeather& weather, std::size_t count);
CellExposure first_instants(const CellExposure& exposure, std::size_t count);

}  // namespace slabtide
