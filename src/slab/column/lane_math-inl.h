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
#include "slab/column/lane_quad-inl.h"
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

// The operations below are found by their arguments, among Highway's or those of lane_quad-inl.h.
#ifdef __wasm_simd128__
using LaneTag = FloatTag;
using LaneVector = Floats;
using LaneTruth = QuadMask;
#else
using LaneTag = hn::ScalableTag<float>;
using LaneVector = hn::Vec<LaneTag>;
using LaneTruth = hn::Mask<LaneTag>;
#endif
using LaneInteger = hn::Rebind<std::int32_t, LaneTag>;
using LaneUnsigned = hn::Rebind<std::uint32_t, LaneTag>;

HWY_INLINE LaneVector all_lanes(float value) { return Set(LaneTag(), value); }

/// a b + c, rounded after each, since not every instruction set can round once: so all give the
/// same to the bit.
HWY_INLINE LaneVector times_plus(LaneVector a, LaneVector b, LaneVector c) {
  return Add(Mul(a, b), c);
}

/// The terms up to the power `last`, every second, without the lowest power of x.
template <std::size_t count>
HWY_INLINE LaneVector every_second(LaneVector square, const std::array<float, count>& c,
                                   std::size_t last) {
  LaneVector sum = all_lanes(c[last]);
  for (std::size_t i = last; i >= 2; i -= 2) sum = times_plus(sum, square, all_lanes(c[i - 2]));
  return sum;
}

/// c[0] + c[1] x + c[2] x^2 + ..., of an even number of terms.
template <std::size_t count>
HWY_INLINE LaneVector polynomial(LaneVector x, const std::array<float, count>& c) {
  static_assert(count % 2 == 0);
  const LaneVector square = Mul(x, x);
  return times_plus(every_second(square, c, count - 1), x, every_second(square, c, count - 2));
}

// ln 2 as a sum, of which the first times a whole number up to 128 is exact.
constexpr float ln2_high = 0x1.62e4p-1F;
constexpr float ln2_low = 1.42860682e-6F;
constexpr int mantissa_bits = 23;

/// e^x, off by 2e-7 of itself at most; what would be under 1e-37 or over 1e37 stays there.
HWY_INLINE LaneVector short_exp(LaneVector x) {
  // Of (e^r - 1)/r for |r| up to ln(2)/2.
  constexpr std::array<float, 6> c{1.00000001078F,   0.500000008086F,   0.166665051707F,
                                   0.0416662405348F, 0.00836915781542F, 0.0013948593155F};
  constexpr float largest = 86.0F;
  constexpr float per_ln2 = 1.44269504F;
  constexpr float to_integer = 0x1.8p23F;  // added, it leaves no room for what follows the point
  const LaneVector held = Max(Min(x, all_lanes(largest)), all_lanes(-largest));
  const LaneVector shifted = times_plus(held, all_lanes(per_ln2), all_lanes(to_integer));
  const LaneVector twos = Sub(shifted, all_lanes(to_integer));
  const LaneVector rest =
      Sub(Sub(held, Mul(twos, all_lanes(ln2_high))), Mul(twos, all_lanes(ln2_low)));
  const LaneVector of_rest = times_plus(polynomial(rest, c), rest, all_lanes(1.0F));
  const auto exponent = ShiftLeft<mantissa_bits>(BitCast(LaneInteger(), shifted));
  return BitCast(LaneTag(), Add(BitCast(LaneInteger(), of_rest), exponent));
}

/// ln x, off by 2e-7 of itself at most, for x from 1e-37 to 1e37.
HWY_INLINE LaneVector short_log(LaneVector x) {
  // Of ln(1 + f)/f for 1 + f from sqrt(1/2) to sqrt(2).
  constexpr std::array<float, 10> c{
      0.999999999959F,  -0.499999882904F, 0.333333260048F,  -0.250015865077F, 0.200019679134F,
      -0.166090132325F, 0.14181844972F,   -0.132434686869F, 0.129046083736F,  -0.0762103769535F};
  constexpr std::int32_t one_bits = 0x3F800000;
  constexpr std::int32_t sqrt_half_bits = 0x3F3504F3;
  constexpr std::int32_t integer_bits = 0x4B000000;
  constexpr float bias = 0x1p23F + 127.0F;
  const auto bits = BitCast(LaneInteger(), x);
  const auto shifted = Add(bits, Set(LaneInteger(), one_bits - sqrt_half_bits));
  const auto exponent =
      BitCast(LaneInteger(), ShiftRight<mantissa_bits>(BitCast(LaneUnsigned(), shifted)));
  const auto fraction_bits =
      Sub(Add(bits, Set(LaneInteger(), one_bits)), ShiftLeft<mantissa_bits>(exponent));
  const LaneVector twos =
      Sub(BitCast(LaneTag(), Or(exponent, Set(LaneInteger(), integer_bits))), all_lanes(bias));
  const LaneVector f = Sub(BitCast(LaneTag(), fraction_bits), all_lanes(1.0F));
  const LaneVector low = times_plus(f, polynomial(f, c), Mul(twos, all_lanes(ln2_low)));
  return Add(Mul(twos, all_lanes(ln2_high)), low);
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
