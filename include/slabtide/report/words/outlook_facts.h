#pragma once

#include <string>

#include "slabtide/day/plan/outlook.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Everything that a report of the outlook shows. The references must outlive the call.
struct OutlookFacts {
  const PlannedPour& plan;
  const Outlook& outlook;
};

/// The sun's strength at which the bar beside an hour is full (ours).
inline constexpr double full_sun_w_m2 = 1000.0;
/// The drying rate at which its bar is full: the day's fastest, but at least 1.2 kg/m²h (ours).
double full_drying_kg_m2_h(const Outlook& outlook);
/// An hour's chance of rain in percent, without the sign; "wet" if the forecast has rain without a
/// chance of it, "-" if it has none.
std::string rain_words(const OutlookHour& hour);

}  // namespace slabtide
