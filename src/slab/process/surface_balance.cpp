#include "slabtide/slab/process/surface_balance.h"

#include "slab/process/surface_balance-inl.h"

namespace slabtide {

double absorbed_longwave_w_m2(double air_c, double sky_emissivity, double sky_view) {
  return HWY_NAMESPACE::absorbed_longwave_w_m2(air_c, sky_emissivity, sky_view);
}

SurfaceExchange surface_exchange(const SurfaceConditions& conditions, double surface_c) {
  const auto found = HWY_NAMESPACE::surface_exchange(conditions, surface_c);
  return {found.w_m2, found.slope_w_m2k, found.evaporation_kg_m2_h};
}

}  // namespace slabtide
