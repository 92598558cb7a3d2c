#pragma once

#include "slabtide/core/civil_time.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// Hourly rows from a typed high and low, and a row at each day's low and high so that both
/// are reached. Covers from the midnight that begins the day before the pour (for the ground)
/// to 72 h after the pour's own, so the night and the morning after the pour are inside.
///
/// Air by high_low_air_c; the day before is like the pour's, days after its morrow like the
/// morrow. Dew point constant, at most the air. Where the sun hardly rises or sets, a day of
/// 4 or 22 h about its noon is taken. Wind at 10 m: 0.6 of the mean by night; by day a half
/// sine on top, centred on 2.5 h past solar noon (near 15 h on the clock), as long as the day
/// within 12 to 16 h and as high as keeps the daily mean. Clouds by the part of the day.
/// Status: ours, beside the air's curve.
/// Error: std::invalid_argument as validate(TypedWeather) and validate(Site), and for a date
/// outside limits::years.
Forecast high_low_forecast(const TypedWeather& weather, const Site& site, Date pour_date);

}  // namespace slabtide
