#pragma once

#include "slabtide/job/job.h"
#include "slabtide/weather/forecast.h"

namespace slabtide {

/// Hourly rows from a typed high and low: Parton & Logan 1981, corrected so that the night
/// reaches the next low. Covers from the midnight before the pour to 72 h after it, so the
/// night and the morning after the pour are inside.
Forecast high_low_forecast(const TypedWeather& weather, const Site& site, Date pour_date);

}  // namespace slabtide
