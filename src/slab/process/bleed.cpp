#include "bleed.h"

#include <algorithm>

namespace slabtide {
namespace {

// FHWA paving estimate, kg/m2 per mm of depth. From memory.
constexpr double bleed_per_w_cm = 0.051;
constexpr double bleed_held_back = 0.015;

constexpr double entrained_air_fraction = 0.04;  // from here on air reduces bleeding: ours
constexpr double entrained_air_factor = 0.6;     // ours
constexpr double fume_factor = 0.25;             // ours

}  // namespace

double total_bleed_kg_m2_per_mm(const Mix& mix) {
  const double plain = std::max(0.0, bleed_per_w_cm * mix.w_cm - bleed_held_back);
  const double air = mix.air_fraction >= entrained_air_fraction ? entrained_air_factor : 1.0;
  const double fume = mix.silica_fume_fraction >= hardly_bleeds_fume_fraction ? fume_factor : 1.0;
  return plain * air * fume;
}

double settling_time_h(double thickness_m) {
  constexpr double settling_h_per_m = 18.0;  // ours
  return settling_h_per_m * thickness_m;
}

}  // namespace slabtide
