#pragma once

#include <vector>

#include "slabtide/day/practice.h"
#include "slabtide/job/job.h"

namespace slabtide {

/// When a zone is placed: its first concrete to its last.
struct ZonePlacing {
  UtcTime start;
  UtcTime end;
};

/// m3 an hour, from the hauling method and the hands, or as the user fixed it.
double placing_rate_m3_h(const Pour& pour, const PlacingRates& rates);

/// Zones one after another in the pour's order; one entry a zone, in the order of job.zones.
std::vector<ZonePlacing> place_zones(const Job& job, const PlacingRates& rates);

}  // namespace slabtide
