#pragma once

#include "slabtide/day/plan/outlook.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// All that a report of the outlook shows. The references outlive the call that takes them.
struct OutlookFacts {
  const PlannedPour& plan;
  const Outlook& outlook;
};

}  // namespace slabtide
