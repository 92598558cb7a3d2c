#pragma once

#include "slabtide/day/plan/outlook.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Everything that a report of the outlook shows. The references must outlive the call.
struct OutlookFacts {
  const PlannedPour& plan;
  const Outlook& outlook;
};

}  // namespace slabtide
