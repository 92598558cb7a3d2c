// Read once for each instruction set (Highway's way), hence no plain include guard.
#if defined(SLABTIDE_SLAB_LANES_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANES_INL_H
#undef SLABTIDE_SLAB_LANES_INL_H
#else
#define SLABTIDE_SLAB_LANES_INL_H
#endif

#include <hwy/highway.h>
//
#include <hwy/contrib/math/math-inl.h>

#include "slab/numbers-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

using LaneTag = hn::ScalableTag<double>;
using Vector = hn::Vec<LaneTag>;
using VectorMask = hn::Mask<LaneTag>;

/// The columns for which something holds.
struct LaneMask {
  VectorMask low;
  VectorMask high;
};

/// One number of several columns: two vectors, so that while one waits for a result the other
/// computes. What a lane holds never depends on the lanes beside it.
struct Lanes {
  Vector low;
  Vector high;

  Lanes() = default;
  Lanes(Vector l, Vector h) : low(l), high(h) {}
  Lanes(double all) : low(hn::Set(LaneTag(), all)), high(low) {}  // as a double does: by itself
};

HWY_INLINE Lanes operator+(Lanes a, Lanes b) {
  return {hn::Add(a.low, b.low), hn::Add(a.high, b.high)};
}
HWY_INLINE Lanes operator-(Lanes a, Lanes b) {
  return {hn::Sub(a.low, b.low), hn::Sub(a.high, b.high)};
}
HWY_INLINE Lanes operator*(Lanes a, Lanes b) {
  return {hn::Mul(a.low, b.low), hn::Mul(a.high, b.high)};
}
HWY_INLINE Lanes operator/(Lanes a, Lanes b) {
  return {hn::Div(a.low, b.low), hn::Div(a.high, b.high)};
}
HWY_INLINE Lanes operator-(Lanes a) { return {hn::Neg(a.low), hn::Neg(a.high)}; }
HWY_INLINE Lanes& operator+=(Lanes& a, Lanes b) { return a = a + b; }
HWY_INLINE Lanes& operator-=(Lanes& a, Lanes b) { return a = a - b; }

HWY_INLINE LaneMask operator>(Lanes a, Lanes b) {
  return {hn::Gt(a.low, b.low), hn::Gt(a.high, b.high)};
}
HWY_INLINE LaneMask operator>=(Lanes a, Lanes b) {
  return {hn::Ge(a.low, b.low), hn::Ge(a.high, b.high)};
}
HWY_INLINE LaneMask both(LaneMask a, LaneMask b) {
  return {hn::And(a.low, b.low), hn::And(a.high, b.high)};
}
HWY_INLINE LaneMask either(LaneMask a, LaneMask b) {
  return {hn::Or(a.low, b.low), hn::Or(a.high, b.high)};
}
HWY_INLINE bool any(LaneMask a) {
  return !hn::AllFalse(LaneTag(), hn::Or(a.low, a.high));
}
HWY_INLINE Lanes select(LaneMask which, Lanes yes, Lanes no) {
  return {hn::IfThenElse(which.low, yes.low, no.low),
          hn::IfThenElse(which.high, yes.high, no.high)};
}

HWY_INLINE Lanes max(Lanes a, Lanes b) { return {hn::Max(a.low, b.low), hn::Max(a.high, b.high)}; }
HWY_INLINE Lanes min(Lanes a, Lanes b) { return {hn::Min(a.low, b.low), hn::Min(a.high, b.high)}; }
HWY_INLINE Lanes abs(Lanes a) { return {hn::Abs(a.low), hn::Abs(a.high)}; }
HWY_INLINE Lanes sqrt(Lanes a) { return {hn::Sqrt(a.low), hn::Sqrt(a.high)}; }
HWY_INLINE Lanes exp(Lanes a) {
  return {hn::Exp(LaneTag(), a.low), hn::Exp(LaneTag(), a.high)};
}
HWY_INLINE Lanes log(Lanes a) {
  return {hn::Log(LaneTag(), a.low), hn::Log(LaneTag(), a.high)};
}

/// Of x above 0.
HWY_INLINE Lanes pow(Lanes x, Lanes y) { return exp(y * log(x)); }
HWY_INLINE Lanes cbrt(Lanes x) {
  constexpr double smallest = 1.0e-300;  // log has no value for 0
  return select(x > 0.0, exp(log(max(x, smallest)) * (1.0 / 3.0)), 0.0);
}

template <>
struct Memory<Lanes> {
  static constexpr std::size_t in_vector = hn::MaxLanes(LaneTag());
  static constexpr std::size_t columns = 2 * in_vector;
  static Lanes load(const double* from) {
    return {hn::Load(LaneTag(), from), hn::Load(LaneTag(), from + in_vector)};
  }
  static void store(Lanes value, double* to) {
    hn::Store(value.low, LaneTag(), to);
    hn::Store(value.high, LaneTag(), to + in_vector);
  }
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
