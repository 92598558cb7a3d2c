// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_WATER_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_WATER_INL_H
#undef SLABTIDE_SLAB_LANE_WATER_INL_H
#else
#define SLABTIDE_SLAB_LANE_WATER_INL_H
#endif

#include "slab/column/lane_traits-inl.h"
#include "slab/process/bleed-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// The water on top: what bleeds out less what evaporates. Bleeding first makes good what the slab
/// has lost of its own.
template <class Number>
class LaneWater {
 public:
  LaneWater(const TraitsOf<Number>& traits, Number placed_age_h, Number concrete_c)
      : traits_(traits),
        placed_age_h_(placed_age_h),
        settling_rate_(settling_rate(concrete_c)),
        bled_fraction_(bleed_fraction(placed_age_h, placed_age_h, settled_h_, traits.setting)) {}

  /// Advances by a step that ends at this set age and temperature (at mid-depth) and evaporation.
  void move(Number step_s, Number set_age_h, Number middle_c, Number ending_kg_m2_h) {
    const Number step_h = step_s * (1.0 / seconds_per_hour);
    const Number rate = settling_rate(middle_c);
    settled_h_ += 0.5 * step_h * (settling_rate_ + rate);
    settling_rate_ = rate;
    const Number fraction = bleed_fraction(set_age_h, placed_age_h_,
                                           settled_h_ / traits_.settling_time_h, traits_.setting);
    const Number bled = traits_.total_bleed_kg_m2 * (fraction - bled_fraction_);
    bled_fraction_ = fraction;
    const Number mean = 0.5 * (evaporation_kg_m2_h + ending_kg_m2_h);
    evaporation_kg_m2_h = ending_kg_m2_h;
    bleed_kg_m2_h = bled / step_h;
    stock_kg_m2_ += bled - mean * step_h;
    bleed_water_kg_m2 = max(stock_kg_m2_, Number(0.0));
  }

  /// What the slab has lost below its film, so long from now.
  Number lost_kg_m2(Number ahead_h) const {
    return max(ahead_h * (evaporation_kg_m2_h - bleed_kg_m2_h) - stock_kg_m2_, Number(0.0));
  }

  Number evaporation_kg_m2_h = 0.0;
  Number bleed_kg_m2_h = 0.0;
  Number bleed_water_kg_m2 = 0.0;

 private:
  const TraitsOf<Number>& traits_;
  Number placed_age_h_;
  Number settling_rate_;    // now
  Number settled_h_ = 0.0;  // at 20 °C
  Number bled_fraction_;
  Number stock_kg_m2_ = 0.0;  // the film; below 0 what the slab has lost of its own
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
