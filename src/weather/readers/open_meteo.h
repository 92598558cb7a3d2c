#pragma once

#include "json_value.h"
#include "slabtide/core/clock.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether the document is one for `read_open_meteo`.
bool is_open_meteo(const JsonValue& document);

/// Reads an hourly forecast of Open-Meteo (JSON: `hourly.time[]` and a parallel list for each
/// quantity).
///
/// - `hourly.time` is local time at the forecast's place, without an offset: `utc_offset_seconds`
///   is subtracted. Numbers (`timeformat=unixtime`) are seconds since 1970 in UTC.
/// - Quantities have their present or their older names: temperature_2m, dew_point_2m
///   (dewpoint_2m),
///   relative_humidity_2m (relativehumidity_2m), cloud_cover (cloudcover), wind_speed_10m
///   (windspeed_10m), wind_gusts_10m (windgusts_10m), shortwave_radiation, precipitation,
///   precipitation_probability, weather_code (weathercode; 95 and over is thunder). Any value
///   may be null. Units are those given in `hourly_units`.
/// - Radiation is the mean of the hour before its time, as in ForecastHour. Precipitation and its
///   probability are also for the hour before, and are moved to the row that starts that hour.
/// - A document `{"error": true, "reason": ...}` is an error with that reason.
/// - The service gives no time of issue; `slabtide fetch` adds `slabtide_fetched`, which counts
///   as one.
/// The zone is used for the notes only.
Parsed<Forecast> read_open_meteo(const JsonValue& document, const Clock& clock);

}  // namespace slabtide
