// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_QUAD_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_QUAD_INL_H
#undef SLABTIDE_SLAB_LANE_QUAD_INL_H
#else
#define SLABTIDE_SLAB_LANE_QUAD_INL_H
#endif

#include <wasm_simd128.h>

#include <cstddef>
#include <cstdint>

#include <hwy/highway.h>

// Four floats in a vector register of WebAssembly: what lanes-inl.h and lane_math-inl.h need of a
// vector, for which Highway 1.0.3 has only its emulation there. Found by argument-dependent lookup,
// hence Highway's names.

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// Stands for a vector of two T in the calls, as Highway's tags do.
template <class Each>
struct QuadTag {
  using T = Each;
  template <class Other>
  using Rebind = QuadTag<Other>;
};

template <class T>
struct Quad {
  v128_t all;
};

/// Where a comparison holds: all bits set.
struct QuadMask {
  v128_t all;
};

using Floats = Quad<float>;
using FloatTag = QuadTag<float>;
using Integers = Quad<int32_t>;

HWY_INLINE Floats Set(FloatTag /*tag*/, float all) { return {wasm_f32x4_splat(all)}; }
HWY_INLINE Integers Set(QuadTag<int32_t> /*tag*/, int32_t all) { return {wasm_i32x4_splat(all)}; }
template <class To, class From>
HWY_INLINE Quad<To> BitCast(QuadTag<To> /*tag*/, Quad<From> a) {
  return {a.all};
}
constexpr std::size_t MaxLanes(FloatTag /*tag*/) { return 4; }
HWY_INLINE Floats Load(FloatTag /*tag*/, const float* from) { return {wasm_v128_load(from)}; }
HWY_INLINE void Store(Floats a, FloatTag /*tag*/, float* to) { wasm_v128_store(to, a.all); }

HWY_INLINE Floats Add(Floats a, Floats b) { return {wasm_f32x4_add(a.all, b.all)}; }
HWY_INLINE Floats Sub(Floats a, Floats b) { return {wasm_f32x4_sub(a.all, b.all)}; }
HWY_INLINE Floats Mul(Floats a, Floats b) { return {wasm_f32x4_mul(a.all, b.all)}; }
HWY_INLINE Floats Div(Floats a, Floats b) { return {wasm_f32x4_div(a.all, b.all)}; }
HWY_INLINE Floats Neg(Floats a) { return {wasm_f32x4_neg(a.all)}; }
HWY_INLINE Floats Abs(Floats a) { return {wasm_f32x4_abs(a.all)}; }
HWY_INLINE Floats Sqrt(Floats a) { return {wasm_f32x4_sqrt(a.all)}; }
HWY_INLINE Floats Max(Floats a, Floats b) { return {wasm_f32x4_pmax(b.all, a.all)}; }
HWY_INLINE Floats Min(Floats a, Floats b) { return {wasm_f32x4_pmin(b.all, a.all)}; }

template <class T>
HWY_INLINE Quad<T> Or(Quad<T> a, Quad<T> b) {
  return {wasm_v128_or(a.all, b.all)};
}
HWY_INLINE QuadMask Gt(Floats a, Floats b) { return {wasm_f32x4_gt(a.all, b.all)}; }
HWY_INLINE QuadMask Ge(Floats a, Floats b) { return {wasm_f32x4_ge(a.all, b.all)}; }
HWY_INLINE QuadMask And(QuadMask a, QuadMask b) { return {wasm_v128_and(a.all, b.all)}; }
HWY_INLINE QuadMask Or(QuadMask a, QuadMask b) { return {wasm_v128_or(a.all, b.all)}; }
HWY_INLINE bool AllFalse(FloatTag /*tag*/, QuadMask a) { return !wasm_v128_any_true(a.all); }
HWY_INLINE Floats IfThenElse(QuadMask which, Floats yes, Floats no) {
  return {wasm_v128_bitselect(yes.all, no.all, which.all)};
}

HWY_INLINE Integers Add(Integers a, Integers b) { return {wasm_i32x4_add(a.all, b.all)}; }
HWY_INLINE Integers Sub(Integers a, Integers b) { return {wasm_i32x4_sub(a.all, b.all)}; }
template <int bits>
HWY_INLINE Integers ShiftLeft(Integers a) {
  return {wasm_i32x4_shl(a.all, bits)};
}
template <int bits>
HWY_INLINE Quad<uint32_t> ShiftRight(Quad<uint32_t> a) {
  return {wasm_u32x4_shr(a.all, bits)};
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
