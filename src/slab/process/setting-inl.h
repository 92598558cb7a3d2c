// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_SETTING_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_SETTING_INL_H
#undef SLABTIDE_SLAB_SETTING_INL_H
#else
#define SLABTIDE_SLAB_SETTING_INL_H
#endif

#include "core/numbers-inl.h"
#include "slab/process/arrhenius-inl.h"
#include "slab/process/setting.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// `Setting` has the members of SettingParameters.

constexpr double set_reference_k = 295.93;  // 73 °F, ASTM C403

template <class Number>
Number set_rate(Number concrete_c, Number activation_energy_j_mol) {
  return arrhenius_factor(concrete_c, set_reference_k, activation_energy_j_mol);
}

template <class Setting>
auto initial_set_age_h(const Setting& setting) {
  return setting.initial_set_h + setting.shift_h;
}

template <class Setting>
auto final_set_age_h(const Setting& setting) {
  return setting.final_set_h + setting.shift_h;
}

/// The exponent b of the power law.
template <class Setting>
auto resistance_exponent(const Setting& setting) {
  return std::log(final_set_psi / initial_set_psi) /
         log(setting.final_set_h / setting.initial_set_h);
}

/// ASTM C403 penetration resistance at a set age, psi; 0 until the dormant shift has passed, at
/// most `largest_resistance_psi`.
///
/// Idealises: log resistance is linear in log time (ASTM C403); an admixture lengthens or shortens
/// the dormant period without changing the shape of the rise.
/// Symbols: PR = 500 ((t_e - d)/t_i)^b, b = ln 8 / ln(t_f/t_i); t_i, t_f set times at 73 °F
/// without admixture, d the admixture shift, all hours of set age.
/// Status: log-log line published, the shift is ours. `exponent` is resistance_exponent(setting).
template <class Number, class Setting>
Number resistance_psi(Number set_age_h, const Setting& setting, Number exponent) {
  constexpr double smallest = 1.0e-9;  // a power of 0 is undefined
  const Number risen_h = set_age_h - setting.shift_h;
  const Number psi =
      initial_set_psi * pow(max(risen_h / setting.initial_set_h, Number(smallest)), exponent);
  return select(risen_h > 0.0, min(psi, Number(largest_resistance_psi)), Number(0.0));
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
