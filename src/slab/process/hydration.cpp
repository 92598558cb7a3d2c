#include "hydration.h"

#include <algorithm>
#include <cmath>

#include "slab/process/hydration-inl.h"
#include "slab/process/setting-inl.h"
#include "slabtide/core/units.h"

namespace slabtide {
namespace {

constexpr double joules_per_kg_per_j_g = 1000.0;

/// Bogue mass fractions of a cement, and its Blaine fineness.
struct Cement {
  double c3s;
  double c2s;
  double c3a;
  double c4af;
  double so3;
  double free_cao;
  double mgo;
  double blaine_m2_kg;
};

// Default cements: ours.
constexpr Cement type_i_ii{.c3s = 0.57,
                           .c2s = 0.16,
                           .c3a = 0.09,
                           .c4af = 0.08,
                           .so3 = 0.030,
                           .free_cao = 0.01,
                           .mgo = 0.02,
                           .blaine_m2_kg = 370.0};
constexpr Cement type_iii{.c3s = 0.57,
                          .c2s = 0.16,
                          .c3a = 0.09,
                          .c4af = 0.08,
                          .so3 = 0.035,
                          .free_cao = 0.01,
                          .mgo = 0.02,
                          .blaine_m2_kg = 540.0};

// CaO of fly ash by class if the mix does not give it: ours, ASTM C618 divides the classes at 18 %.
constexpr double ash_f_cao = 0.05;
constexpr double ash_c_cao = 0.25;

// Heat of the phases, J/g: Schindler & Folliard 2005, eq. for H_cem. From memory.
constexpr double heat_c3s = 500.0;
constexpr double heat_c2s = 260.0;
constexpr double heat_c3a = 866.0;
constexpr double heat_c4af = 420.0;
constexpr double heat_so3 = 624.0;
constexpr double heat_free_cao = 1186.0;
constexpr double heat_mgo = 850.0;
constexpr double heat_slag = 461.0;
constexpr double heat_ash_cao = 1800.0;

// Ultimate degree of hydration: Schindler & Folliard 2005. From memory.
constexpr double ultimate_scale = 1.031;
constexpr double ultimate_half_w_cm = 0.194;
constexpr double ultimate_ash = 0.50;
constexpr double ultimate_slag = 0.30;

/// A factor that is a product of powers of the cement's composition.
struct PowerLaw {
  double scale;
  double c3a;
  double c3s;
  double blaine;
  double so3;
};
constexpr PowerLaw tau_law{
    .scale = 66.78, .c3a = -0.154, .c3s = -0.401, .blaine = -0.804, .so3 = -0.758};
constexpr PowerLaw beta_law{
    .scale = 181.4, .c3a = 0.146, .c3s = 0.227, .blaine = -0.535, .so3 = 0.558};
constexpr double tau_slag = 2.187;
constexpr double tau_ash_cao = 9.50;
constexpr double beta_slag = -0.647;

// Activation energy: Schindler 2004. From memory.
constexpr double energy_scale_j_mol = 22100.0;
constexpr double energy_c3a = 0.30;
constexpr double energy_c4af = 0.25;
constexpr double energy_blaine = 0.35;
constexpr double energy_ash = 1.05;
constexpr double energy_ash_cao_scale = 0.40;
constexpr double energy_slag = 0.40;

double power_law(const PowerLaw& law, const Cement& cement) {
  return law.scale * std::pow(cement.c3a, law.c3a) * std::pow(cement.c3s, law.c3s) *
         std::pow(cement.blaine_m2_kg, law.blaine) * std::pow(cement.so3, law.so3);
}

double cement_heat_j_g(const Cement& c) {
  return heat_c3s * c.c3s + heat_c2s * c.c2s + heat_c3a * c.c3a + heat_c4af * c.c4af +
         heat_so3 * c.so3 + heat_free_cao * c.free_cao + heat_mgo * c.mgo;
}

double energy_j_mol(const Cement& cement, const Mix& mix, double ash_cao) {
  const double blend = 1.0 -
                       energy_ash * mix.ash_fraction * (1.0 - ash_cao / energy_ash_cao_scale) +
                       energy_slag * mix.slag_fraction;
  return energy_scale_j_mol * blend * std::pow(cement.c3a, energy_c3a) *
         std::pow(cement.c4af, energy_c4af) * std::pow(cement.blaine_m2_kg, energy_blaine);
}

double ultimate_degree(const Mix& mix) {
  const double degree = ultimate_scale * mix.w_cm / (ultimate_half_w_cm + mix.w_cm) +
                        ultimate_ash * mix.ash_fraction + ultimate_slag * mix.slag_fraction;
  return std::min(degree, 1.0);
}

}  // namespace

HydrationParameters hydration_parameters(const Mix& mix) {
  return hydration_parameters(mix, mix.ash_class == AshClass::f ? ash_f_cao : ash_c_cao);
}

HydrationParameters hydration_parameters(const Mix& mix, double ash_cao_fraction) {
  const Cement& cement = mix.cement == CementType::type_iii ? type_iii : type_i_ii;
  const double cement_fraction = 1.0 - mix.ash_fraction - mix.slag_fraction;
  return {.alpha_u = ultimate_degree(mix),
          .tau_h = power_law(tau_law, cement) *
                   std::exp(tau_slag * mix.slag_fraction +
                            tau_ash_cao * mix.ash_fraction * ash_cao_fraction),
          .beta = power_law(beta_law, cement) * std::exp(beta_slag * mix.slag_fraction),
          .ultimate_heat_j_g = cement_heat_j_g(cement) * cement_fraction +
                               heat_slag * mix.slag_fraction +
                               heat_ash_cao * ash_cao_fraction * mix.ash_fraction,
          .cementitious_kg_m3 = mix.cementitious_kg_m3,
          .activation_energy_j_mol = energy_j_mol(cement, mix, ash_cao_fraction)};
}

double heat_capacity_of_hydration_j_m3(const HydrationParameters& hydration) {
  return hydration.ultimate_heat_j_g * joules_per_kg_per_j_g * hydration.cementitious_kg_m3;
}

void hold_early_heat(HydrationParameters& hydration, double initial_set_h) {
  constexpr double at_initial_set_j_g = 12.5;
  constexpr double tested_c = HWY_NAMESPACE::set_reference_k - kelvin_from_celsius(0.0);
  HydrationParameters bare = hydration;
  bare.shift_h = bare.held_back = 0.0;
  hydration.set_age_h =
      initial_set_h * HWY_NAMESPACE::hydration_rate(tested_c, hydration.activation_energy_j_mol);
  const double heat_j_g =
      hydration.ultimate_heat_j_g * HWY_NAMESPACE::hydration_degree(hydration.set_age_h, bare);
  hydration.held_back = std::max(0.0, heat_j_g / at_initial_set_j_g - 1.0);
}

}  // namespace slabtide
