#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/pour/order.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// What may be needed on site.
enum class SupplyKind {
  concrete,
  release_powder,  ///< or liquid, for the same area
  release_liquid,
  surface_retarder,
  salt,
  curing_compound,
  cure_and_seal,
  sealer,
  plastic,
  blankets
};

/// The id used in the JSON, "release_powder", and the words used in lists.
std::string_view supply_id(SupplyKind kind);
std::string_view supply_words(SupplyKind kind);

/// The unit of the amount.
enum class SupplyUnit { m3, kg, l, m2 };
SupplyUnit supply_unit(SupplyKind kind);

/// Something to have on site.
struct Supply {
  SupplyKind kind = SupplyKind::concrete;
  double amount = 0.0;   ///< in its unit
  double area_m2 = 0.0;  ///< to be covered; 0 for concrete
  std::vector<std::string> zones;
};

/// Concrete as ordered; release agent for stamped and textured areas including borders with that
/// finish; surface retarder and rock salt for the areas finished with them; sealer for the zones
/// that are washed; curing compound, cure-and-seal, plastic or blankets if the job has them.
std::vector<Supply> take_along(const Job& job, const OrderPlan& order,
                               const std::vector<ZonePlan>& zones, const Practice& practice);

}  // namespace slabtide
