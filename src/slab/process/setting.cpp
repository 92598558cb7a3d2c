#include "setting.h"

#include <cmath>
#include <stdexcept>

#include "slab/process/setting-inl.h"

namespace slabtide {
namespace {

namespace formula = HWY_NAMESPACE;

}  // namespace

double set_rate(double concrete_c, double activation_energy_j_mol) {
  return formula::set_rate(concrete_c, activation_energy_j_mol);
}

double set_age_at_resistance_h(double psi, const SettingParameters& setting) {
  if (!(psi > 0.0 && psi <= largest_resistance_psi))
    throw std::invalid_argument("set age: the resistance is not within what setting covers");
  return setting.shift_h +
         setting.initial_set_h *
             std::pow(psi / initial_set_psi, 1.0 / formula::resistance_exponent(setting));
}

double initial_set_age_h(const SettingParameters& setting) {
  return formula::initial_set_age_h(setting);
}

double final_set_age_h(const SettingParameters& setting) {
  return formula::final_set_age_h(setting);
}

}  // namespace slabtide
