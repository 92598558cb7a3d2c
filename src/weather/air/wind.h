#pragma once

#include "slabtide/job/model/job.h"

namespace slabtide {

/// Wind 0.5 m above the slab over the forecast's 10 m wind: open lot 0.60, yard 0.45,
/// sheltered court 0.28. Status: ours.
double named_wind_ratio(WindSetting setting);

/// The site's measured ratio if there is one, else that of its named setting.
/// Error: std::invalid_argument for a measured ratio that is negative or not a number.
double wind_ratio(const Site& site);

}  // namespace slabtide
