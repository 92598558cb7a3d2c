#pragma once

#include "json_value.h"
#include "slabtide/core/clock.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether the document is one for `read_nws_grid`.
bool is_nws_grid(const JsonValue& document);

/// Reads the US National Weather Service's raw grid forecast (GeoJSON; each layer under
/// `properties` has a `uom` and `values`, each with `validTime` and `value`).
///
/// - The layers temperature, dewpoint, relativeHumidity, windSpeed, windGust, skyCover,
///   probabilityOfPrecipitation, quantitativePrecipitation and weather are read, each with its own
///   intervals: `validTime` is an instant with an offset and a duration ("/PT1H", "/P6DT15H"). The
///   intervals of a layer increase and do not overlap. An empty layer gives no values, a null value
///   none for its interval. All other layers are ignored.
/// - The hours are whole hours UTC. A value holds for all hours of its interval, from its start up
///   to but not including its end. `quantitativePrecipitation` is a total over its interval and is
///   spread evenly.
/// - There is thunder in the hours for which `weather` names thunderstorms.
/// - The time of issue is `updateTime`.
/// The zone is used for the notes only.
Parsed<Forecast> read_nws_grid(const JsonValue& document, const Clock& clock);

}  // namespace slabtide
