// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_EVAPORATION_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_EVAPORATION_INL_H
#undef SLABTIDE_SLAB_EVAPORATION_INL_H
#else
#define SLABTIDE_SLAB_EVAPORATION_INL_H
#endif

#include "core/numbers-inl.h"
#include "slab/process/setting-inl.h"
#include "slabtide/core/units.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// Menzel 1954, psi and mph. From memory.
constexpr double menzel_scale = 0.44;
constexpr double menzel_still = 0.253;
constexpr double menzel_wind_per_mph = 0.096;

constexpr double wetness_after_final_set = 0.1;         // ours
constexpr double wetness_under_curing_compound = 0.05;  // ours

template <class Number>
Number menzel_wind_term(Number wind_mph, double still_factor) {
  return menzel_scale * (menzel_still * still_factor + menzel_wind_per_mph * wind_mph);
}

/// The factor of (e_0 - e_a) in SI: kg/m2/h per Pa. The windless part (0.253) has a factor for
/// thinner air (thin_air.h).
template <class Number>
Number menzel_coefficient_kg_m2_h_pa(Number wind_m_s, double still_factor) {
  constexpr double si = kg_m2_h_from_lb_ft2_h(1.0) / pa_per_psi;
  return si * menzel_wind_term(wind_m_s * mph_from_m_s(1.0), still_factor);
}

/// Fraction of the free-water rate at which an unsealed surface of this set age still evaporates: 1
/// until initial set, falling linearly to 0.1 at final set and staying there. Status: ours.
template <class Number, class Setting>
Number bare_wetness(Number set_age_h, const Setting& setting) {
  const Number initial_h = initial_set_age_h(setting);
  const Number dried =
      clamp((set_age_h - initial_h) / (final_set_age_h(setting) - initial_h), 0.0, 1.0);
  return 1.0 - (1.0 - wetness_after_final_set) * dried;
}

/// The same, but at most 0.05 under a curing compound. Status: ours.
template <class Number, class Setting, class Mask>
Number surface_wetness(Number set_age_h, const Setting& setting, Mask curing_compound_on) {
  const Number wetness = bare_wetness(set_age_h, setting);
  return select(curing_compound_on, min(wetness, Number(wetness_under_curing_compound)), wetness);
}

/// How dark a bare surface of this wetness still is: 1 wet, 0 at final set and after.
template <class Number>
Number surface_dampness(Number bare) {
  return clamp((bare - wetness_after_final_set) / (1.0 - wetness_after_final_set), 0.0, 1.0);
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
