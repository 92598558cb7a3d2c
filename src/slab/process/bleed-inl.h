// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_BLEED_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_BLEED_INL_H
#undef SLABTIDE_SLAB_BLEED_INL_H
#else
#define SLABTIDE_SLAB_BLEED_INL_H
#endif

#include "core/numbers-inl.h"
#include "slab/process/setting-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

constexpr double bleeding_over_at = 0.75;  // of the set age at initial set: ours

// Fitted to handbook viscosities of water: 1.307, 1.002 and 0.798 mPa s at 10, 20 and 30 °C.
constexpr double viscosity_energy_j_mol = 17.5e3;
constexpr double viscosity_reference_k = 293.15;  // 20 °C

/// How fast the solids settle, in hours per hour: 1 at 20 °C, inversely proportional to the
/// viscosity of water.
///
/// Symbols: mu(20 °C)/mu(T), as exp[(E/R)(1/293.15 - 1/T)], E 17.5 kJ/mol.
/// Source: viscosity of water, any handbook; settling depends on it, Powers 1968, The Properties of
/// Fresh Concrete. Status: from memory. Range: 10 to 40 °C within 4 %, 6 % off at 0 °C.
template <class Number>
Number settling_rate(Number concrete_c) {
  return arrhenius_factor(concrete_c, viscosity_reference_k, Number(viscosity_energy_j_mol));
}

/// Fraction of the bleed water that has come up: `settled` is the settling since placing (hours at
/// 20 °C) over `settling_time_h`.
///
/// Idealises: the drum mixes back any water that rises in transit, so that bleeding begins at
/// placing and all of B comes after that. It ends when the solids have settled or at 0.75 of
/// initial set, whichever is sooner; concrete placed later than that does not bleed (fraction 1
/// from the start).
/// Symbols: 1 - x^2, x = min((0.75 - s)/(0.75 - s_p), 1 - settled) within 0 and 1; s = set age over
/// set age at initial set, s_p the same when placed.
/// Status: ours; fast at first, over before initial set (FHWA-RD-02-099, published: bleeding
/// is over by initial set). Range: 5 to 40 °C.
template <class Number, class Setting>
Number bleed_fraction(Number set_age_h, Number placed_age_h, Number settled,
                      const Setting& setting) {
  constexpr double smallest_h = 1.0e-9;  // placed too stiff to bleed: nothing is left to come
  const Number over_h = bleeding_over_at * initial_set_age_h(setting);
  const Number unset = (over_h - set_age_h) / max(over_h - placed_age_h, Number(smallest_h));
  const Number left = clamp(min(unset, 1.0 - settled), 0.0, 1.0);
  return 1.0 - left * left;
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
