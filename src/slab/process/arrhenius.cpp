#include "slabtide/slab/process/arrhenius.h"

#include "slab/process/arrhenius-inl.h"

namespace slabtide {
double arrhenius_factor(double concrete_c, double reference_k, double activation_energy_j_mol) {
  return HWY_NAMESPACE::arrhenius_factor(concrete_c, reference_k, activation_energy_j_mol);
}

}  // namespace slabtide
