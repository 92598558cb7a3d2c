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

/// Degree of hydration, 0 to alpha_u, at an equivalent age (hours at 21.1 °C from batching):
/// alpha = alpha_u exp(-(tau/(t_e - d))^beta); 0 until the shift d has passed.
template <class Number, class Hydration>
Number hydration_degree(Number equivalent_age_h, const Hydration& hydration) {
  constexpr double youngest_h = 1.0e-9;  // a power of 0 is undefined
  const Number age_h = equivalent_age_h - hydration.shift_h;
  const Number degree = hydration.alpha_u *
                        exp(-pow(hydration.tau_h / max(age_h, Number(youngest_h)), hydration.beta));
  return select(age_h > 0.0, degree, Number(0.0));
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
