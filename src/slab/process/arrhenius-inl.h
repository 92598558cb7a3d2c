// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_ARRHENIUS_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_ARRHENIUS_INL_H
#undef SLABTIDE_SLAB_ARRHENIUS_INL_H
#else
#define SLABTIDE_SLAB_ARRHENIUS_INL_H
#endif

#include "core/numbers-inl.h"
#include "slabtide/core/units.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

constexpr double gas_constant_j_molk = 8.314462618;  // CODATA 2018

/// How many times faster a process of the given activation energy runs than at `reference_k`.
///
/// Idealises: one activation energy over the whole range. Symbols: exp[(E/R)(1/T_ref - 1/T)].
/// Source: Arrhenius; for concrete ASTM C1074, annex on equivalent age. Status: published.
template <class Number>
Number arrhenius_factor(Number concrete_c, double reference_k, Number activation_energy_j_mol) {
  return exp(activation_energy_j_mol * (1.0 / gas_constant_j_molk) *
             (1.0 / reference_k - 1.0 / kelvin_from_celsius(concrete_c)));
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
