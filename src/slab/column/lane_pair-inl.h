// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_PAIR_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_PAIR_INL_H
#undef SLABTIDE_SLAB_LANE_PAIR_INL_H
#else
#define SLABTIDE_SLAB_LANE_PAIR_INL_H
#endif

#include <wasm_simd128.h>

#include <cstddef>
#include <cstdint>

#include <hwy/highway.h>

// Two doubles in a vector register of WebAssembly: what lanes-inl.h and lane_math-inl.h need of a
// vector, for which Highway 1.0.3 has only its emulation there. Found by argument-dependent lookup,
// hence Highway's names.

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// Stands for a vector of two T in the calls, as Highway's tags do.
template <class Each>
struct PairTag {
  using T = Each;
  template <class Other>
  using Rebind = PairTag<Other>;
};

template <class T>
struct Pair {
  v128_t both;
};

/// Where a comparison holds: all bits set.
struct PairMask {
  v128_t both;
};

using Doubles = Pair<double>;
using DoubleTag = PairTag<double>;
using Longs = Pair<int64_t>;

HWY_INLINE Doubles Set(DoubleTag /*tag*/, double all) { return {wasm_f64x2_splat(all)}; }
HWY_INLINE Longs Set(PairTag<int64_t> /*tag*/, int64_t all) { return {wasm_i64x2_splat(all)}; }
template <class To, class From>
HWY_INLINE Pair<To> BitCast(PairTag<To> /*tag*/, Pair<From> a) {
  return {a.both};
}
constexpr std::size_t MaxLanes(DoubleTag /*tag*/) { return 2; }
HWY_INLINE Doubles Load(DoubleTag /*tag*/, const double* from) { return {wasm_v128_load(from)}; }
HWY_INLINE void Store(Doubles a, DoubleTag /*tag*/, double* to) { wasm_v128_store(to, a.both); }

HWY_INLINE Doubles Add(Doubles a, Doubles b) { return {wasm_f64x2_add(a.both, b.both)}; }
HWY_INLINE Doubles Sub(Doubles a, Doubles b) { return {wasm_f64x2_sub(a.both, b.both)}; }
HWY_INLINE Doubles Mul(Doubles a, Doubles b) { return {wasm_f64x2_mul(a.both, b.both)}; }
HWY_INLINE Doubles Div(Doubles a, Doubles b) { return {wasm_f64x2_div(a.both, b.both)}; }
HWY_INLINE Doubles Neg(Doubles a) { return {wasm_f64x2_neg(a.both)}; }
HWY_INLINE Doubles Abs(Doubles a) { return {wasm_f64x2_abs(a.both)}; }
HWY_INLINE Doubles Sqrt(Doubles a) { return {wasm_f64x2_sqrt(a.both)}; }
HWY_INLINE Doubles Max(Doubles a, Doubles b) { return {wasm_f64x2_pmax(b.both, a.both)}; }
HWY_INLINE Doubles Min(Doubles a, Doubles b) { return {wasm_f64x2_pmin(b.both, a.both)}; }
HWY_INLINE Doubles MulAdd(Doubles a, Doubles b, Doubles c) { return Add(Mul(a, b), c); }

template <class T>
HWY_INLINE Pair<T> Or(Pair<T> a, Pair<T> b) {
  return {wasm_v128_or(a.both, b.both)};
}
HWY_INLINE PairMask Gt(Doubles a, Doubles b) { return {wasm_f64x2_gt(a.both, b.both)}; }
HWY_INLINE PairMask Ge(Doubles a, Doubles b) { return {wasm_f64x2_ge(a.both, b.both)}; }
HWY_INLINE PairMask And(PairMask a, PairMask b) { return {wasm_v128_and(a.both, b.both)}; }
HWY_INLINE PairMask Or(PairMask a, PairMask b) { return {wasm_v128_or(a.both, b.both)}; }
HWY_INLINE bool AllFalse(DoubleTag /*tag*/, PairMask a) { return !wasm_v128_any_true(a.both); }
HWY_INLINE Doubles IfThenElse(PairMask which, Doubles yes, Doubles no) {
  return {wasm_v128_bitselect(yes.both, no.both, which.both)};
}

HWY_INLINE Longs Add(Longs a, Longs b) { return {wasm_i64x2_add(a.both, b.both)}; }
HWY_INLINE Longs Sub(Longs a, Longs b) { return {wasm_i64x2_sub(a.both, b.both)}; }
template <int bits>
HWY_INLINE Longs ShiftLeft(Longs a) {
  return {wasm_i64x2_shl(a.both, bits)};
}
template <int bits>
HWY_INLINE Pair<uint64_t> ShiftRight(Pair<uint64_t> a) {
  return {wasm_u64x2_shr(a.both, bits)};
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
