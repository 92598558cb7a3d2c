// Read once for each instruction set (Highway's way), hence no plain include guard.
#if defined(SLABTIDE_SLAB_LANE_DRYING_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_DRYING_INL_H
#undef SLABTIDE_SLAB_LANE_DRYING_INL_H
#else
#define SLABTIDE_SLAB_LANE_DRYING_INL_H
#endif

#include "slab/column/lane_traits-inl.h"
#include "slab/column/lane_weather-inl.h"
#include "slab/process/evaporation-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// What lies on a surface.
template <class Number>
struct LidOf {
  Number cover_m2k_w;
  Number passes;  // fraction of the vapour that it lets through
  Number sealed;  // 1 under a curing compound, else 0
};

/// Where one lid differs from another.
template <class Number>
auto differs(const LidOf<Number>& a, const LidOf<Number>& b) {
  return abs(a.cover_m2k_w - b.cover_m2k_w) + abs(a.passes - b.passes) + abs(a.sealed - b.sealed) >
         0.0;
}

/// Under `cover`, when the set ages at mid-depth and at the working depth are these.
template <class Number>
LidOf<Number> lid_of(const TraitsOf<Number>& traits, const CoverOf<Number>& cover,
                     Number middle_age_h, Number work_age_h) {
  const auto cures = both(traits.curing_cover_from_set_age_h >= 0.0,
                          middle_age_h >= traits.curing_cover_from_set_age_h);
  const auto sealed = both(traits.curing_compound_from_set_age_h >= 0.0,
                           work_age_h >= traits.curing_compound_from_set_age_h);
  const auto filmed = traits.evaporation_film_to_set_age_h >= work_age_h;
  return {cover.resistance_m2k_w + select(cures, traits.curing_cover_m2k_w, Number(0.0)),
          select(cures, Number(0.0), cover.open) *
              select(filmed, Number(evaporation_film_leaves), Number(1.0)),
          select(sealed, Number(1.0), Number(0.0))};
}

/// A surface as it dries.
template <class Number>
struct WetnessOf {
  Number vapour;  // share of free-water evaporation
  Number sun;     // how dark it still is: 1 wet, 0 dry
};

/// Where the slab has lost so much of its own water. What is sealed keeps its water, and its
/// darkness with it.
template <class Number>
WetnessOf<Number> wetness_under(const TraitsOf<Number>& traits, const LidOf<Number>& lid,
                                Number lost_kg_m2) {
  const auto steady = traits.steady_wetness >= 0.0;
  const Number drying = surface_wetness(lost_kg_m2, lid.sealed > 0.5);
  const Number dampness = surface_dampness(bare_wetness(lost_kg_m2));
  return {lid.passes * select(steady, traits.steady_wetness, drying),
          select(steady, Number(1.0), dampness)};
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
