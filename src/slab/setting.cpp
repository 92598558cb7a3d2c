#include "slabtide/slab/setting.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "slabtide/slab/arrhenius.h"

namespace slabtide {
namespace {

constexpr double reference_k = 295.93;  // 73 °F, ASTM C403

double exponent(const SettingParameters& setting) {
  return std::log(final_set_psi / initial_set_psi) /
         std::log(setting.final_set_h / setting.initial_set_h);
}

}  // namespace

double set_rate(double concrete_c, double activation_energy_j_mol) {
  return arrhenius_factor(concrete_c, reference_k, activation_energy_j_mol);
}

double resistance_psi(double set_age_h, const SettingParameters& setting) {
  const double risen_h = set_age_h - setting.shift_h;
  if (!(risen_h > 0.0)) return 0.0;
  const double psi = initial_set_psi * std::pow(risen_h / setting.initial_set_h, exponent(setting));
  return std::min(psi, largest_resistance_psi);
}

double set_age_at_resistance_h(double psi, const SettingParameters& setting) {
  if (!(psi > 0.0 && psi <= largest_resistance_psi))
    throw std::invalid_argument("set age: the resistance is not within what setting covers");
  return setting.shift_h +
         setting.initial_set_h * std::pow(psi / initial_set_psi, 1.0 / exponent(setting));
}

double initial_set_age_h(const SettingParameters& setting) {
  return setting.initial_set_h + setting.shift_h;
}

double final_set_age_h(const SettingParameters& setting) {
  return setting.final_set_h + setting.shift_h;
}

}  // namespace slabtide
