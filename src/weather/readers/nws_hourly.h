#pragma once

#include "json_value.h"
#include "slabtide/core/clock.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether the document is one for `read_nws_hourly`.
bool is_nws_hourly(const JsonValue& document);

/// Reads the US National Weather Service's hourly forecast (GeoJSON, `properties.periods[]`).
///
/// - `temperature` is a number in `temperatureUnit` (F or C), or a measured value.
/// - `dewpoint`, `relativeHumidity` and `probabilityOfPrecipitation` are measured values: objects
///   with `unitCode` and `value`. Each may be null or absent. If both dew point and humidity are
///   given, the dew point is used.
/// - `windSpeed` and `windGust` are words ("5 to 10 mph" is 7.5) or measured values, which may
///   give `minValue` and `maxValue` instead of a value.
/// - Cloud is not given directly: it comes from the icon's sky code or the words (nws_values.h).
///   Sun and amounts of rain are not given at all.
/// - Each hour starts at `startTime`, which has an offset; the hours increase. Periods of over
///   three hours belong to another document of the service and are refused.
/// - The time of issue is `updateTime`, else `generatedAt`.
/// The zone is used for the notes only.
Parsed<Forecast> read_nws_hourly(const JsonValue& document, const Clock& clock);

}  // namespace slabtide
