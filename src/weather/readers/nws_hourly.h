#pragma once

#include "json_value.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether `read_nws_hourly` is the reader for it.
bool is_nws_hourly(const JsonValue& document);

/// Reads the US National Weather Service's hourly forecast (GeoJSON, `properties.periods[]`).
///
/// - `temperature` is a figure in `temperatureUnit` (F or C), or a measured value.
/// - `dewpoint`, `relativeHumidity`, `probabilityOfPrecipitation` are measured values, an object
///   of `unitCode` and `value`; any may be null or absent. The dew point counts where both it
///   and the humidity are given.
/// - `windSpeed` and `windGust` are words ("5 to 10 mph" is 7.5) or measured values, which may
///   give `minValue` and `maxValue` instead of a value.
/// - Cloud is not told: it comes from the icon's sky code or the words (nws_values.h). Nor are
///   sun and amounts of rain.
/// - Each hour starts at `startTime`, which carries its offset; the hours rise. Periods over
///   three hours long are another document of the service and are refused.
/// - The time of issue is `updateTime`, else `generatedAt`.
/// The zone is for the notes only.
Parsed<Forecast> read_nws_hourly(const JsonValue& document, const TimeZone& zone);

}  // namespace slabtide
