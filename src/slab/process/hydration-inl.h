// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_HYDRATION_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_HYDRATION_INL_H
#undef SLABTIDE_SLAB_HYDRATION_INL_H
#else
#define SLABTIDE_SLAB_HYDRATION_INL_H
#endif

#include "core/numbers-inl.h"
#include "slab/process/arrhenius-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// `Hydration` has the members of HydrationParameters.

constexpr double hydration_reference_k = 294.25;  // 21.1 °C, Schindler & Folliard 2005

/// How fast equivalent age grows, in hours per hour: 1 at 21.1 °C.
template <class Number>
Number hydration_rate(Number concrete_c, Number activation_energy_j_mol) {
  return arrhenius_factor(concrete_c, hydration_reference_k, activation_energy_j_mol);
}

template <class Hydration>
auto held_back_h4(const Hydration& hydration) {
  const auto square_h2 = hydration.set_age_h * hydration.set_age_h;
  return hydration.held_back * square_h2 * square_h2;
}

/// Degree of hydration, 0 to alpha_u, at an equivalent age (hours at 21.1 °C from batching):
/// alpha = alpha_u exp(-(tau/a)^beta) a^4/(a^4 + h), a = t_e - d; 0 until the shift d has passed.
///
/// The S-curve is fitted to whole days, and releases too much before setting: h = held_back t_i^4
/// holds back so much that 12.5 kJ/kg are out at initial set (`hold_early_heat`). What is held back
/// comes later, by twice the age of initial set most of it. The fourth power is ours.
template <class Number, class Hydration>
Number hydration_degree(Number equivalent_age_h, const Hydration& hydration) {
  constexpr double youngest_h = 1.0e-9;  // a power of 0 is undefined
  const Number age_h = equivalent_age_h - hydration.shift_h;
  const Number some_h = max(age_h, Number(youngest_h));
  const Number square_h2 = some_h * some_h;
  const Number fourth = square_h2 * square_h2;
  // (tau/a)^beta; what does not change from cell to cell the compiler takes out of their loop.
  const Number power = exp(hydration.beta * (log(hydration.tau_h) - log(some_h)));
  const Number degree =
      hydration.alpha_u * exp(-power) * fourth / (fourth + held_back_h4(hydration));
  return select(age_h > 0.0, degree, Number(0.0));
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
