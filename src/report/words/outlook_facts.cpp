#include "slabtide/report/words/outlook_facts.h"

#include <algorithm>

namespace slabtide {

double full_drying_kg_m2_h(const Outlook& outlook) {
  constexpr double min_full_kg_m2_h = 1.2;
  double full = min_full_kg_m2_h;
  for (const OutlookHour& hour : outlook.hours) full = std::max(full, hour.evaporation_sun_kg_m2_h);
  return full;
}

}  // namespace slabtide
