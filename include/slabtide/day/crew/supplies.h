#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/pour/order.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// What a pour can need on site.
enum class SupplyKind {
  concrete,
  release_powder,  ///< or the liquid, for the same area
  release_liquid,
  curing_compound,
  sealer,
  plastic,
  blankets
};

/// The id used in the JSON, "release_powder", and as it stands in a list.
std::string_view supply_id(SupplyKind kind);
std::string_view supply_words(SupplyKind kind);

/// What the amount is of.
enum class SupplyUnit { m3, kg, l, m2 };
SupplyUnit supply_unit(SupplyKind kind);

/// Something to have on site.
struct Supply {
  SupplyKind kind = SupplyKind::concrete;
  double amount = 0.0;   ///< in its unit
  double area_m2 = 0.0;  ///< that it goes on; 0 for concrete
  std::vector<std::string> zones;
};

/// Concrete as ordered; release agent for what is stamped or textured, borders of that finish
/// included, as powder and as liquid (one of them is wanted); sealer for the zones that are
/// washed; curing compound, plastic or blankets where the job has them.
std::vector<Supply> take_along(const Job& job, const OrderPlan& order,
                               const std::vector<ZonePlan>& zones, const Practice& practice);

}  // namespace slabtide
