#include "slabtide/report/words/outlook_facts.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace slabtide {

double full_drying_kg_m2_h(const Outlook& outlook) {
  constexpr double min_full_kg_m2_h = 1.2;
  double full = min_full_kg_m2_h;
  for (const OutlookHour& hour : outlook.hours) full = std::max(full, hour.evaporation_sun_kg_m2_h);
  return full;
}

std::string rain_words(const OutlookHour& hour) {
  const long chance_percent = std::lround(100.0 * hour.rain_chance);
  if (chance_percent > 0) return fmt::format("{}", chance_percent);
  return hour.rain_mm_h > 0.0 ? "wet" : "-";
}

}  // namespace slabtide
