// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_EVAPORATION_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_EVAPORATION_INL_H
#undef SLABTIDE_SLAB_EVAPORATION_INL_H
#else
#define SLABTIDE_SLAB_EVAPORATION_INL_H
#endif

#include "core/numbers-inl.h"
#include "slabtide/core/units.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// Menzel 1954, psi and mph. From memory.
constexpr double menzel_scale = 0.44;
constexpr double menzel_still = 0.253;
constexpr double menzel_wind_per_mph = 0.096;

constexpr double reserve_kg_m2 = 1.0;                   // ours: see bare_wetness
constexpr double front_kg_m2 = 0.3;                     // ours: see bare_wetness
constexpr double wetness_of_dry = 0.1;                  // ours
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

/// Share of the free-water rate at which a surface still evaporates, where nothing seals it, by the
/// water that it has lost and bleeding has not brought.
///
/// Idealises: all of it while a film stands, and after that while the paste's own water reaches the
/// top; once it has lost `reserve_kg_m2` of that, the front goes down and vapour has to come up
/// through what is dry: its way grows with what is lost.
/// Symbols: w = 1/(1 + max(0, D - 1.0)/0.3), D the water lost, kg/m2.
/// Source: two stages of drying, at a constant rate and falling with the depth of the front, as of
/// any porous body; that fresh concrete keeps the free-water rate after its sheen is gone: Hover;
/// Azenha et al. 2007 on pastes. Status: from memory; the two figures are ours, by slabs that lose
/// water in a straight line for their first one to two kg/m2 and a tenth of that rate next day.
template <class Number>
Number bare_wetness(Number lost_kg_m2) {
  return 1.0 / (1.0 + max(lost_kg_m2 - reserve_kg_m2, Number(0.0)) * (1.0 / front_kg_m2));
}

/// The same, but at most 0.05 under a curing compound. Status: ours.
template <class Number, class Mask>
Number surface_wetness(Number lost_kg_m2, Mask curing_compound_on) {
  const Number wetness = bare_wetness(lost_kg_m2);
  return select(curing_compound_on, min(wetness, Number(wetness_under_curing_compound)), wetness);
}

/// What a sprayed evaporation film leaves of the evaporation while the concrete is fresh.
///
/// Idealises: one figure for sun and wind, all over, from placing on, sprayed again after each
/// pass. Source: makers' figures for films of fatty alcohol, some 40 % less in sun and up to 80 %
/// less in wind. Status: from memory; of these the lesser is taken, since each pass breaks the film
/// (ours).
constexpr double evaporation_film_leaves = 0.6;

/// How dark a bare surface of that wetness still is: 1 wet, 0 where it gives a tenth or less.
template <class Number>
Number surface_dampness(Number bare) {
  return clamp((bare - wetness_of_dry) / (1.0 - wetness_of_dry), 0.0, 1.0);
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
