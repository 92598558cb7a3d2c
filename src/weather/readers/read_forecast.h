#pragma once

#include <string_view>

#include "slabtide/core/clock.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Reads a forecast document of any known format, which is recognised from its content. `zone` is
/// used for times written without an offset. A new format needs a reader in its own file and a row
/// in the table in read_forecast.cpp.
Parsed<Forecast> read_forecast(std::string_view text, const Clock& clock);

}  // namespace slabtide
