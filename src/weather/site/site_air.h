#pragma once

#include "slabtide/job/model/job.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// The forecast with its air temperature changed at every hour by LearnedAir::air_k, the difference
/// learned at the site, and a note that says so. The dew point stays, but is limited to the air
/// temperature. Differences under 0.05 K are ignored. Status: ours.
Forecast at_site(Forecast forecast, const LearnedAir& learned);

}  // namespace slabtide
