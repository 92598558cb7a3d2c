// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_STRENGTH_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_STRENGTH_INL_H
#undef SLABTIDE_SLAB_STRENGTH_INL_H
#else
#define SLABTIDE_SLAB_STRENGTH_INL_H
#endif

#include "core/numbers-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// `Strength` has the members of StrengthParameters.

/// Compressive strength at a set age, psi; 0 before t_0.
template <class Number, class Strength>
Number strength_psi(Number set_age_h, const Strength& strength) {
  const Number age_h = max(set_age_h - strength.start_set_age_h, Number(0.0));
  const Number grown = strength.rate_per_day * age_h / hours_per_day;
  return strength.ultimate_psi * grown / (1.0 + grown);
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
