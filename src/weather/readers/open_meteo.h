#pragma once

#include "json_value.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether `read_open_meteo` is the reader for it.
bool is_open_meteo(const JsonValue& document);

/// Reads an hourly forecast of Open-Meteo (JSON, `hourly.time[]` with a list beside it for each
/// quantity).
///
/// - `hourly.time` is local to the place of the forecast, without an offset: `utc_offset_seconds`
///   is subtracted. Figures (`timeformat=unixtime`) are seconds since 1970 in UTC already.
/// - Quantities by their present or their older names: temperature_2m, dew_point_2m (dewpoint_2m),
///   relative_humidity_2m (relativehumidity_2m), cloud_cover (cloudcover), wind_speed_10m
///   (windspeed_10m), wind_gusts_10m (windgusts_10m), shortwave_radiation, precipitation,
///   precipitation_probability, weather_code (weathercode; 95 and over is thunder). Any value
///   may be null. Units are those that `hourly_units` names.
/// - Radiation is the mean of the hour before its time, as in ForecastHour. Precipitation and its
///   probability are of the hour before too, and move to the hour they fall in.
/// - A document `{"error": true, "reason": ...}` is an error with that reason.
/// - The service gives no time of issue; `slabtide fetch` adds `slabtide_fetched`, which counts
///   as one.
/// The zone is for the notes only.
Parsed<Forecast> read_open_meteo(const JsonValue& document, const TimeZone& zone);

}  // namespace slabtide
