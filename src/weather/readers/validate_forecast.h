#pragma once

#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether a forecast built in code can be made into a series; a forecast from a reader always can.
/// Error: std::invalid_argument for a row whose time is invalid or does not come after the row
/// before, a value that no weather has (the readers' own limits) or a text that is not UTF-8. The
/// message names the field in SI: "hours[3].rain_mm: got nan, expected 0 to 350".
void validate(const Forecast& forecast);

}  // namespace slabtide
