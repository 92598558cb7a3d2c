#include "slabtide/slab/process/convection.h"

#include "slab/process/convection-inl.h"

namespace slabtide {

double forced_convection_w_m2k(double wind_m_s) {
  return HWY_NAMESPACE::forced_convection_w_m2k(wind_m_s);
}

Convection doe2_convection(double surface_less_air_k, double forced_w_m2k) {
  const auto found = HWY_NAMESPACE::doe2_convection(surface_less_air_k, forced_w_m2k);
  return {found.h_w_m2k, found.slope_w_m2k2};
}

}  // namespace slabtide
