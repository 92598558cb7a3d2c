#include "slabtide/slab/arrhenius.h"

#include <cmath>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

constexpr double gas_constant_j_molk = 8.314462618;  // CODATA 2018

}  // namespace

double arrhenius_factor(double concrete_c, double reference_k, double activation_energy_j_mol) {
  return std::exp(activation_energy_j_mol / gas_constant_j_molk *
                  (1.0 / reference_k - 1.0 / kelvin_from_celsius(concrete_c)));
}

}  // namespace slabtide
