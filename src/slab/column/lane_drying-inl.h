// Read once for each instruction set (Highway's way), hence no plain include guard.
#if defined(SLABTIDE_SLAB_LANE_DRYING_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_DRYING_INL_H
#undef SLABTIDE_SLAB_LANE_DRYING_INL_H
#else
#define SLABTIDE_SLAB_LANE_DRYING_INL_H
#endif

#include "slab/column/lane_aging-inl.h"
#include "slab/column/lane_traits-inl.h"
#include "slab/column/lane_water-inl.h"
#include "slab/process/evaporation-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// A surface as it dries.
template <class Number>
struct WetnessOf {
  Number vapour;  // share of free-water evaporation
  Number sun;     // how dark it still is: 1 wet, 0 dry
};

/// `ahead_s` from now, where `open` lets vapour through. What is sealed keeps its water, and its
/// darkness with it.
template <class Number>
WetnessOf<Number> wetness_ahead(const TraitsOf<Number>& traits, const LaneAging<Number>& aging,
                                const LaneWater<Number>& water, Number open, Number ahead_s) {
  const Number ahead_h = ahead_s * (1.0 / seconds_per_hour);
  const auto film = both(traits.curing_compound_from_set_age_h >= 0.0,
                         aging.set_age_ahead_h(LaneAging<Number>::work, ahead_h) >=
                             traits.curing_compound_from_set_age_h);
  const auto steady = traits.steady_wetness >= 0.0;
  const auto filmed = traits.evaporation_film_to_set_age_h >=
                      aging.set_age_ahead_h(LaneAging<Number>::work, ahead_h);
  const Number passes = open * select(filmed, Number(evaporation_film_leaves), Number(1.0));
  const Number lost_kg_m2 = water.lost_kg_m2(ahead_h);
  const Number drying = surface_wetness(lost_kg_m2, film);
  const Number dampness = surface_dampness(bare_wetness(lost_kg_m2));
  return {passes * select(steady, traits.steady_wetness, drying),
          select(steady, Number(1.0), dampness)};
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
