#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// When a zone is placed: from its first concrete to its last.
struct ZonePlacing {
  UtcTime start;
  UtcTime end;
};

/// The part of a zone that one load places.
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
  double volume_m3 = 0.0;  ///< what its zones take, with the allowance
  double sold_m3 = 0.0;    ///< what the plant is asked for
  UtcTime batched;
  UtcTime arrives;
  UtcTime starts;  ///< starts unloading
  UtcTime empty;
  std::vector<LoadShare> fractions;
  std::vector<Admixture> admixtures;  ///< this load's own, from the job
  bool own_admixtures = false;
  bool is_short = false;
  bool over_limit = false;  ///< not empty within the discharge limit

  /// How long the truck stands on site before it can unload, because the one before is not empty.
  double waits_min() const;
  /// Whether that is long enough to tell of: arrivals are agreed to five minutes (common practice,
  /// no source).
  bool waits() const;
};

/// The order to the plant, and when the concrete is placed where.
struct OrderPlan {
  double neat_m3 = 0.0;      ///< zones and faces as drawn
  double ordered_m3 = 0.0;   ///< including the allowance
  double sold_m3 = 0.0;      ///< of all loads: what the plant is asked for, and paid for
  double low_base_m3 = 0.0;  ///< the extra concrete that a low base would need
  double placing_rate_m3_h = 0.0;
  std::vector<Load> loads;
  std::vector<ZonePlacing> placings;  ///< in the order of job.zones

  /// When the first concrete is placed, in whichever zone; there must be a zone.
  UtcTime first_placed() const;
};

/// Placing rate in m3 per hour, from the hauling method and the number of workers, or as the user
/// fixed it.
double placing_rate_m3_h(const Pour& pour, const PlacingRates& rates);

/// Rounded up to what a plant sells: quarters of a cubic yard, or of a cubic metre.
/// Source: common practice; two hundredths of a quarter over are let pass (ours).
double sold_m3(double m3, UnitSystem units);

/// Places the zones one after another in the pour's order, each from the loads as they come; a zone
/// with its own time starts a new load. What is placed without a stop comes in as few loads as the
/// load size allows, and those as even as they are sold (`sold_m3`): 10.75 yd³ as 5.5 and 5.25, not
/// as a full load and a short one (common practice, no source).
OrderPlan plan_order(const Job& job, const PlacingRates& rates);

/// When the concrete at this fraction of a zone is placed, and from which load.
struct PlacedFrom {
  std::size_t load = 0;  ///< index into OrderPlan::loads
  UtcTime placed;
};
PlacedFrom placed_from(const OrderPlan& order, std::size_t zone, double fraction);

}  // namespace slabtide
