#pragma once

#include <string>
#include <string_view>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide::testing {

/// US Central Time, from its rule: the clocks go forward on 2026-03-08 and back on 2026-11-01.
TimeZone central_time();
/// Parses "2026-05-14T13:00Z" and similar.
UtcTime utc(std::string_view text);
/// A document of tests/forecasts.
std::string document(std::string_view name);
/// The findings as the user sees them, without a path.
std::string told(const Parsed<Forecast>& reading, std::string_view text);
/// "2026-05-14T13:00Z air 12.00 dew 7.00 wind 3.00 ...": absent values are left out.
std::string row(const ForecastHour& hour);
/// All rows, one per line.
std::string rows(const Forecast& forecast);

}  // namespace slabtide::testing
