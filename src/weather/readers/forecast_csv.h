#pragma once

#include <string_view>

#include "slabtide/core/clock.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// True if the text looks like comma-separated values: its first line that is neither blank nor a
/// comment contains a comma or the word "time".
bool looks_like_forecast_csv(std::string_view text);

/// Reads an hourly forecast typed or exported as a table. The format:
///
///     # source: the airfield's outlook
///     # issued: 2026-05-13T16:00-05:00
///     time,air_f,dew_point_f,wind_mph,cloud_percent,rain_in
///     2026-05-14T06:00,48,44,4,20,0
///     2026-05-14 07:00,50,44,5,,0
///
/// - The text is UTF-8, with or without a byte order mark and with either kind of line break. Blank
///   lines and lines that start with # are skipped; `# source:` and `# issued:` are read.
/// - The first other line names the columns, in any order. `time` and
///     air_f, air_c                              air temperature
///     dew_point_f, dew_point_c, humidity_percent  at least one of dew point and humidity;
///                                               the dew point is used if both are given
///     wind_mph, wind_m_s, wind_km_h, wind_kn    mean wind at 10 m
///   are required; these are optional:
///     gust_mph, gust_m_s, gust_km_h, gust_kn    gusts at 10 m
///     cloud_percent                             part of the sky covered
///     solar_w_m2                                global horizontal sun, mean of the hour that
///                                               ends at the row's time
///     rain_in, rain_mm                          amount in the hour that starts at the row's time
///     rain_chance_percent                       chance of rain in that hour
///     thunder                                   yes, no or empty
///   Repeating a column or a quantity (in two units), or an unknown column, is an error.
/// - Times are local, or have an offset or Z, and must increase. When the clocks go back, the two
///   passes through the repeated hour are told apart by their order; when they go forward, a time
///   in the skipped hour is an error. Rows are at least an hour apart; closer, equal or decreasing
///   times are errors.
/// - An empty field is a missing value. Missing rows or values of air, moisture, wind or cloud are
///   interpolated with a warning if the rows around them are at most 3 h apart, else an error.
/// - Fields may be in double quotes, with "" for a quotation mark inside; they end on their line.
/// Every finding has its line and column; reading stops after fifty errors.
Parsed<Forecast> read_forecast_csv(std::string_view text, const Clock& clock);

}  // namespace slabtide
