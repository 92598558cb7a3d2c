#pragma once

#include <string>

#include "slabtide/day/pour/order.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// What a change requires, without prices.
struct ChoiceCost {
  /// How much trouble the change is compared with leaving things as they are (0), for ordering
  /// choices with equal results. Ours, without unit; the parts are in choice_cost.cpp.
  double disturbance = 0.0;
  /// "retarder 2 fl oz/cwt x 564 lb/yd³ x 6.6 yd³ = 74 fl oz"; empty if it requires nothing.
  std::string words;
};

/// The cost of `changed` compared with `ordered`; each comes with its order to the plant.
ChoiceCost cost_of(const Job& ordered, const OrderPlan& ordered_loads, const Job& changed,
                   const OrderPlan& changed_loads);

}  // namespace slabtide
