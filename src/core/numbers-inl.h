// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_CORE_NUMBERS_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_CORE_NUMBERS_INL_H
#undef SLABTIDE_CORE_NUMBERS_INL_H
#else
#define SLABTIDE_CORE_NUMBERS_INL_H
#endif

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <hwy/highway.h>

#include "slabtide/core/units.h"

// The formulas are written once for any kind of number. This header defines what they need of a
// number, for double; lanes-inl.h defines it for several columns at once.

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

inline double exp(double x) { return std::exp(x); }
inline double log(double x) { return std::log(x); }
inline double sqrt(double x) { return std::sqrt(x); }
inline double abs(double x) { return std::abs(x); }
inline double pow(double x, double y) { return std::pow(x, y); }
inline double cbrt(double x) { return std::cbrt(x); }
inline double max(double x, double y) { return std::max(x, y); }
inline double min(double x, double y) { return std::min(x, y); }
inline double select(bool which, double yes, double no) { return which ? yes : no; }
inline bool both(bool a, bool b) { return a && b; }
inline bool either(bool a, bool b) { return a || b; }
inline bool any(bool a) { return a; }

template <class Number>
Number clamp(Number x, double low, double high) {
  return min(max(x, Number(low)), Number(high));
}

template <class Number>
Number kelvin_from_celsius(Number c) {
  return c + slabtide::kelvin_from_celsius(0.0);
}

/// How many columns a number holds, and of what it is made in memory.
template <class Number>
struct Memory;

template <>
struct Memory<double> {
  using Each = double;
  static constexpr std::size_t columns = 1;
  static double load(const double* from) { return *from; }
  static void store(double value, double* to) { *to = value; }
};

/// What a number is made of, one entry per column.
template <class Number>
using LaneArray = std::array<typename Memory<Number>::Each, Memory<Number>::columns>;

template <class Number>
HWY_INLINE LaneArray<Number> lanes_of(Number value) {
  HWY_ALIGN LaneArray<Number> each;
  Memory<Number>::store(value, each.data());
  return each;
}

/// Consecutive numbers in memory, for example one per cell.
template <class Number>
struct Row {
  typename Memory<Number>::Each* data = nullptr;

  Number operator[](std::size_t i) const {
    return Memory<Number>::load(data + i * Memory<Number>::columns);
  }
  void put(std::size_t i, Number value) const {
    Memory<Number>::store(value, data + i * Memory<Number>::columns);
  }
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
