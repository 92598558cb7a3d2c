#pragma once

#include "json_value.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether `read_nws_grid` is the reader for it.
bool is_nws_grid(const JsonValue& document);

/// Reads the US National Weather Service's raw grid forecast (GeoJSON,
/// a layer under `properties` has its `uom` and `values`, each with `validTime` and `value`).
///
/// - The layers temperature, dewpoint, relativeHumidity, windSpeed, windGust, skyCover,
///   probabilityOfPrecipitation, quantitativePrecipitation and weather are read, each on
///   intervals of its own: `validTime` is an instant with an offset and a duration ("/PT1H",
///   "/P6DT15H"). In a layer intervals rise and do not overlap. An empty layer tells nothing,
///   a null value nothing for its interval. All other layers are left alone.
/// - The hours are the whole hours UTC; a value holds in all those of its interval, from its
///   start to before its end. `quantitativePrecipitation` is a total over its interval and is
///   spread evenly.
/// - Thunder is where `weather` names thunderstorms.
/// - The time of issue is `updateTime`.
/// The zone is for the notes only.
Parsed<Forecast> read_nws_grid(const JsonValue& document, const TimeZone& zone);

}  // namespace slabtide
