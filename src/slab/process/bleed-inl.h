// Read once for each instruction set (Highway's way), hence no plain include guard.
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

/// Share of the bleed water that has come by a set age, of concrete placed at a set age.
///
/// Idealises: the drum stirs back what rises on the way, so that bleeding begins when placed and
/// all of B comes after that; concrete placed past 0.75 of initial set bleeds no more (share 1
/// from the start).
/// Symbols: 1 - ((0.75 - s)/(0.75 - s_p))^2 from s_p until s = 0.75, then 1; s = set age over set
/// age at initial set, s_p the same when placed.
/// Status: ours; fast at first, over before initial set (FHWA-RD-02-099, published: bleeding
/// is over by initial set). Range: as the set age, 5 to 40 °C.
template <class Number, class Setting>
Number bleed_fraction(Number set_age_h, Number placed_age_h, const Setting& setting) {
  constexpr double smallest_h = 1.0e-9;  // placed too stiff to bleed: nothing is left to come
  const Number over_h = bleeding_over_at * initial_set_age_h(setting);
  const Number left =
      clamp((over_h - set_age_h) / max(over_h - placed_age_h, Number(smallest_h)), 0.0, 1.0);
  return 1.0 - left * left;
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
