#pragma once

#include "slabtide/job/model/job.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// The forecast with its air as warm as it was over earlier forecasts at the site, by
/// LearnedAir::air_k at every hour, and a note that says so. The dew point stays, at or under the
/// air. Less than 0.05 K is not worth a change. Status: ours.
Forecast at_site(Forecast forecast, const LearnedAir& learned);

}  // namespace slabtide
