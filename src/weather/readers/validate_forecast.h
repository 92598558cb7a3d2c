#pragma once

#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Whether a forecast put together in code is one that a series can be made of; what the readers
/// give always is.
/// Error: std::invalid_argument for a row whose time is none or does not come after the row
/// before, a value that no weather has (the readers' own limits) or a text that is not UTF-8. The
/// message names the field in SI: "hours[3].rain_mm: got nan, expected 0 to 350".
void validate(const Forecast& forecast);

}  // namespace slabtide
