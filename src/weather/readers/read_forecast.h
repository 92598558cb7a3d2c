#pragma once

#include <string_view>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Reads a forecast document of any known format, recognised from its content.
/// `zone` gives meaning to times written without an offset. A new format is one reader
/// of its own file and one row in the table in read_forecast.cpp.
Parsed<Forecast> read_forecast(std::string_view text, const TimeZone& zone);

}  // namespace slabtide
