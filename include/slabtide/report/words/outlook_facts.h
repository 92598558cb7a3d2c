#pragma once

#include "slabtide/day/plan/outlook.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Everything that a report of the outlook shows. The references must outlive the call.
struct OutlookFacts {
  const PlannedPour& plan;
  const Outlook& outlook;
};

/// The sun's strength and the drying rate at which the bar beside an hour is full (ours).
inline constexpr double full_sun_w_m2 = 1000.0;
inline constexpr double full_drying_kg_m2_h = 1.2;

}  // namespace slabtide
