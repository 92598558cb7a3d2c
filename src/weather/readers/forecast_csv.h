#pragma once

#include <string_view>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// True where the text looks like a table of comma-separated values: its first line that is
/// neither blank nor a comment holds a comma or the word "time".
bool looks_like_forecast_csv(std::string_view text);

/// Reads an hourly forecast typed or exported as a table. The format:
///
///     # source: the airfield's outlook
///     # issued: 2026-05-13T16:00-05:00
///     time,air_f,dew_point_f,wind_mph,cloud_percent,rain_in
///     2026-05-14T06:00,48,44,4,20,0
///     2026-05-14 07:00,50,44,5,,0
///
/// - UTF-8, a byte-order mark and either line end are taken. Blank lines and lines that start
///   with # are skipped; `# source:` and `# issued:` are read.
/// - The first other line names the columns, in any order. `time` and
///     air_f, air_c                              air temperature
///     dew_point_f, dew_point_c, humidity_percent  at least one of dew point and humidity;
///                                               the dew point counts where both are given
///     wind_mph, wind_m_s, wind_km_h, wind_kn    mean wind at 10 m
///   are needed; these are taken where given:
///     gust_mph, gust_m_s, gust_km_h, gust_kn    gusts at 10 m
///     cloud_percent                             share of the sky covered
///     solar_w_m2                                sun on the level, mean of the hour that ends
///                                               at the row's time
///     rain_in, rain_mm                          falls in the hour that starts at the row's time
///     rain_chance_percent                       chance of it
///     thunder                                   yes, no or empty
///   A column twice, one quantity in two units, or an unknown column is an error.
/// - Times are local, or carry an offset or Z, and rise. Where the clocks go back the hour
///   that happens twice is told apart by order; where they go forward the hour that does not
///   exist is an error. Rows are an hour apart; closer, equal or falling times are errors.
/// - An empty field is a missing value. Missing rows or values of air, moisture, wind or cloud
///   are filled by interpolation with a warning where the hours told are at most 3 h apart, and
///   are an error where they are further apart.
/// - Fields may be in double quotes, "" inside them is one quote; they end on their line.
/// Every finding names its line and column; after fifty errors the reading stops.
Parsed<Forecast> read_forecast_csv(std::string_view text, const TimeZone& zone);

}  // namespace slabtide
