#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"

namespace slabtide {

/// Frost on concrete that is still too weak for it.
struct FrostRisk {
  std::optional<UtcTime> at;   ///< when any cell's surface first freezes while it is too weak
  double min_surface_c = 0.0;  ///< the coldest surface while too weak
  UtcTime coldest_at;          ///< when it is that cold
};

/// Frost on young concrete over sampled days.
struct FrostDays {
  std::vector<double> zone_fractions;  ///< of the days on which each zone freezes, parallel to them
  double any_fraction = 0.0;           ///< of the days on which any of them does
};

/// Whether the zone freezes before it has WeatherLimits::protect_until_psi. Precondition: the zone
/// has cells.
FrostRisk frost_on_young(const ZoneRun& zone, const PourRun& run, const WeatherLimits& limits);

}  // namespace slabtide
