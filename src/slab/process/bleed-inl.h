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

/// Share of the bleed water that has come by a set age: 1 - (1 - s/0.75)^2 until s = 0.75,
/// then all; s = set age over set age at initial set.
/// Status: ours; fast at first, over before initial set (FHWA-RD-02-099, published: bleeding
/// is over by initial set). What comes before placing is stirred back in on the truck.
template <class Number, class Setting>
Number bleed_fraction(Number set_age_h, const Setting& setting) {
  const Number s = set_age_h / initial_set_age_h(setting);
  const Number left = clamp(1.0 - s / bleeding_over_at, 0.0, 1.0);
  return 1.0 - left * left;
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
