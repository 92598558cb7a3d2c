// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANES_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANES_INL_H
#undef SLABTIDE_SLAB_LANES_INL_H
#else
#define SLABTIDE_SLAB_LANES_INL_H
#endif

#include <hwy/highway.h>

#include "core/numbers-inl.h"
#include "slab/column/lane_math-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// The columns for which a condition holds.
struct LaneMask {
  LaneTruth lanes;
};

/// One number for each of several columns. The value in a lane never depends on the other lanes.
///
/// In single precision, of which a register holds twice as many: against doubles it moves no event
/// by a tenth of a second (tests/properties/slab/single_precision_test.cpp).
struct Lanes {
  LaneVector lanes;

  Lanes() = default;
  Lanes(LaneVector each) : lanes(each) {}
  Lanes(double all) : lanes(all_lanes(static_cast<float>(all))) {}
};

HWY_INLINE Lanes operator+(Lanes a, Lanes b) { return Add(a.lanes, b.lanes); }
HWY_INLINE Lanes operator-(Lanes a, Lanes b) { return Sub(a.lanes, b.lanes); }
HWY_INLINE Lanes operator*(Lanes a, Lanes b) { return Mul(a.lanes, b.lanes); }
HWY_INLINE Lanes operator/(Lanes a, Lanes b) { return Div(a.lanes, b.lanes); }
HWY_INLINE Lanes operator-(Lanes a) { return Neg(a.lanes); }
HWY_INLINE Lanes& operator+=(Lanes& a, Lanes b) { return a = a + b; }
HWY_INLINE Lanes& operator-=(Lanes& a, Lanes b) { return a = a - b; }

HWY_INLINE LaneMask operator>(Lanes a, Lanes b) { return {Gt(a.lanes, b.lanes)}; }
HWY_INLINE LaneMask operator>=(Lanes a, Lanes b) { return {Ge(a.lanes, b.lanes)}; }
HWY_INLINE LaneMask both(LaneMask a, LaneMask b) { return {And(a.lanes, b.lanes)}; }
HWY_INLINE LaneMask either(LaneMask a, LaneMask b) { return {Or(a.lanes, b.lanes)}; }
HWY_INLINE bool any(LaneMask a) { return !AllFalse(LaneTag(), a.lanes); }
HWY_INLINE Lanes select(LaneMask which, Lanes yes, Lanes no) {
  return IfThenElse(which.lanes, yes.lanes, no.lanes);
}

HWY_INLINE Lanes max(Lanes a, Lanes b) { return Max(a.lanes, b.lanes); }
HWY_INLINE Lanes min(Lanes a, Lanes b) { return Min(a.lanes, b.lanes); }
HWY_INLINE Lanes abs(Lanes a) { return Abs(a.lanes); }
HWY_INLINE Lanes sqrt(Lanes a) { return Sqrt(a.lanes); }
HWY_INLINE Lanes exp(Lanes a) { return short_exp(a.lanes); }
HWY_INLINE Lanes log(Lanes a) { return short_log(a.lanes); }

/// For x above 0.
HWY_INLINE Lanes pow(Lanes x, Lanes y) { return exp(y * log(x)); }
HWY_INLINE Lanes cbrt(Lanes x) {
  constexpr double smallest = 1.0e-30;  // log is undefined for 0
  return select(x > 0.0, exp(log(max(x, smallest)) * (1.0 / 3.0)), 0.0);
}

template <>
struct Memory<Lanes> {
  using Each = float;
  static constexpr std::size_t columns = MaxLanes(LaneTag());
  static Lanes load(const float* from) { return Load(LaneTag(), from); }
  static void store(Lanes value, float* to) { Store(value.lanes, LaneTag(), to); }
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
