#include "evaporation.h"

#include <algorithm>

#include "slab/process/evaporation-inl.h"

namespace slabtide {

double menzel_evaporation_kg_m2_h(double surface_vapour_pa, double air_vapour_pa, double wind_m_s) {
  const double kg_m2_h_pa = HWY_NAMESPACE::menzel_coefficient_kg_m2_h_pa(wind_m_s, 1.0);
  return std::max(0.0, kg_m2_h_pa * (surface_vapour_pa - air_vapour_pa));
}

}  // namespace slabtide
