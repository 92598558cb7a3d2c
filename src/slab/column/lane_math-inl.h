// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_MATH_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_MATH_INL_H
#undef SLABTIDE_SLAB_LANE_MATH_INL_H
#else
#define SLABTIDE_SLAB_LANE_MATH_INL_H
#endif

#include <array>
#include <cstddef>
#include <cstdint>

#include <hwy/highway.h>
#ifdef __wasm_simd128__
#include "slab/column/lane_pair-inl.h"
#endif

// The exponential and the logarithm of several numbers at once, as exact as the columns need. With
// Highway's, exact to the last bit but one, a column takes a quarter longer.
//
// Source of the polynomials: Remez's algorithm for the least relative error on the interval, ours.
// Status: held against the C library's in tests/unit/slab/column/lane_math_test.cpp.

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

// The operations below are found by their arguments, among Highway's or those of lane_pair-inl.h.
#ifdef __wasm_simd128__
using LaneTag = DoubleTag;
using LaneVector = Doubles;
using LaneTruth = PairMask;
#else
using LaneTag = hn::ScalableTag<double>;
using LaneVector = hn::Vec<LaneTag>;
using LaneTruth = hn::Mask<LaneTag>;
#endif
using LaneInteger = hn::Rebind<std::int64_t, LaneTag>;
using LaneUnsigned = hn::Rebind<std::uint64_t, LaneTag>;

HWY_INLINE LaneVector all_lanes(double value) { return Set(LaneTag(), value); }

/// The terms up to the power `last`, every second, without the lowest power of x.
template <std::size_t count>
HWY_INLINE LaneVector every_second(LaneVector square, const std::array<double, count>& c,
                                   std::size_t last) {
  LaneVector sum = all_lanes(c[last]);
  for (std::size_t i = last; i >= 2; i -= 2) sum = MulAdd(sum, square, all_lanes(c[i - 2]));
  return sum;
}

/// c[0] + c[1] x + c[2] x^2 + ..., of an even number of terms.
template <std::size_t count>
HWY_INLINE LaneVector polynomial(LaneVector x, const std::array<double, count>& c) {
  static_assert(count % 2 == 0);
  const LaneVector square = Mul(x, x);
  return MulAdd(every_second(square, c, count - 1), x, every_second(square, c, count - 2));
}

constexpr double ln2 = 0.693147180559945309;

/// e^x, off by 1.1e-10 of itself at most; what would be under 1e-307 or over 1e307 stays there.
HWY_INLINE LaneVector short_exp(LaneVector x) {
  // Of e^r for |r| up to ln(2)/2.
  constexpr std::array<double, 8> c{
      0.999999999961682414,  1.00000000024308082,    0.500000010453408623,   0.166666651261446327,
      0.0416662254318562449, 0.00833356110134879798, 0.00139481829656559084, 0.0001977516295329132};
  constexpr double largest = 707.0;
  constexpr double to_integer = 0x1.8p52;  // added, it leaves no room for what follows the point
  const LaneVector held = Max(Min(x, all_lanes(largest)), all_lanes(-largest));
  const LaneVector shifted = MulAdd(held, all_lanes(1.0 / ln2), all_lanes(to_integer));
  const LaneVector twos = Sub(shifted, all_lanes(to_integer));
  const LaneVector rest = MulAdd(twos, all_lanes(-ln2), held);
  const auto exponent = ShiftLeft<52>(BitCast(LaneInteger(), shifted));
  return BitCast(LaneTag(), Add(BitCast(LaneInteger(), polynomial(rest, c)), exponent));
}

/// ln x, off by 1.1e-10 of itself at most, for x from 1e-300 to 1e300.
HWY_INLINE LaneVector short_log(LaneVector x) {
  // Of ln(1 + f)/f for 1 + f from sqrt(1/2) to sqrt(2).
  constexpr std::array<double, 12> c{
      1.00000000003489074,  -0.500000003305272616, 0.333333315165204199, -0.249999334830729831,
      0.200001132291429348, -0.166704788556653821, 0.142855075669132244, -0.124105940310096279,
      0.110210998271414581, -0.108811115251660857, 0.107340949565934092, -0.0598539378159006118};
  constexpr std::int64_t one_bits = 0x3FF0000000000000;
  constexpr std::int64_t sqrt_half_bits = 0x3FE6A09E667F3BCD;
  constexpr std::int64_t integer_bits = 0x4330000000000000;
  constexpr double bias = 0x1p52 + 1023.0;
  const auto bits = BitCast(LaneInteger(), x);
  const auto shifted = Add(bits, Set(LaneInteger(), one_bits - sqrt_half_bits));
  const auto exponent = BitCast(LaneInteger(), ShiftRight<52>(BitCast(LaneUnsigned(), shifted)));
  const auto fraction_bits = Sub(Add(bits, Set(LaneInteger(), one_bits)), ShiftLeft<52>(exponent));
  const LaneVector twos =
      Sub(BitCast(LaneTag(), Or(exponent, Set(LaneInteger(), integer_bits))), all_lanes(bias));
  const LaneVector f = Sub(BitCast(LaneTag(), fraction_bits), all_lanes(1.0));
  return MulAdd(twos, all_lanes(ln2), Mul(f, polynomial(f, c)));
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
