#pragma once

#include "slabtide/core/civil_time.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Hourly rows from a typed high and low, plus a row at each day's low and high so that both are
/// reached. Covers from midnight at the start of the day before the pour (for the ground
/// temperature) to 72 h after midnight of the pour's day, so that the night and morning after the
/// pour are included.
///
/// Air by high_low_air_c. The day before is like the pour's day; days after the next are like the
/// next. The dew point is constant, but at most the air temperature. Where the sun hardly rises or
/// sets, the day is taken as 4 or 22 h around solar noon. Wind at 10 m: 0.6 of the mean at night;
/// by day a half sine is added, centred 2.5 h after solar noon (near 15 h on the clock), as long as
/// the day within 12 to 16 h and with the height that keeps the daily mean. Cloud by part of the
/// day. Status: ours, except for the curve of the air.
/// Error: std::invalid_argument as validate(TypedWeather) and validate(Site), and for a date
/// outside limits::years.
Forecast high_low_forecast(const TypedWeather& weather, const Site& site, Date pour_date);

}  // namespace slabtide
