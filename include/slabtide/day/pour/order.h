#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// When a zone is placed: its first concrete to its last.
struct ZonePlacing {
  UtcTime start;
  UtcTime end;
};

/// The stretch of a zone that one load places.
struct LoadShare {
  std::size_t zone = 0;        ///< index into Job::zones
  double from_fraction = 0.0;  ///< of the zone's concrete
  double to_fraction = 1.0;
  UtcTime start;
  UtcTime end;
};

/// One truck.
struct Load {
  int number = 1;
  double volume_m3 = 0.0;
  UtcTime batched;
  UtcTime arrives;
  UtcTime starts;  ///< unloading
  UtcTime empty;
  std::vector<LoadShare> fractions;
  std::vector<Admixture> admixtures;  ///< this load's own, from the job's notes
  bool own_admixtures = false;
  bool is_short = false;
  bool over_limit = false;  ///< not empty within the discharge limit
};

/// The order to the plant and how it flows into the forms.
struct OrderPlan {
  double neat_m3 = 0.0;      ///< zones and faces as drawn
  double ordered_m3 = 0.0;   ///< with the allowance
  double low_base_m3 = 0.0;  ///< what a low base would take besides
  double placing_rate_m3_h = 0.0;
  std::vector<Load> loads;
  std::vector<ZonePlacing> placings;  ///< in the order of job.zones

  /// When the first concrete is placed, whatever zone it is; there must be a zone.
  UtcTime first_placed() const;
};

/// m3 an hour, from the hauling method and the hands, or as the user fixed it.
double placing_rate_m3_h(const Pour& pour, const PlacingRates& rates);

/// Zones one after another in the pour's order, each from the loads as they come; a zone
/// with a time of its own starts a new load. Loads are filled to the load size and the last
/// takes what is left.
OrderPlan plan_order(const Job& job, const PlacingRates& rates);

/// When the concrete at this share of a zone is placed, and from which load.
struct PlacedFrom {
  std::size_t load = 0;  ///< index into OrderPlan::loads
  UtcTime placed;
};
PlacedFrom placed_from(const OrderPlan& order, std::size_t zone, double fraction);

}  // namespace slabtide
