#include "counted_number.h"

#include <array>
#include <cmath>
#include <span>

#include "slab/column/column_lanes-inl.h"

namespace slabtide {
namespace HWY_NAMESPACE {

constexpr std::uint64_t of_exp = 22;
constexpr std::uint64_t of_log = 26;

inline std::uint64_t& counted() {
  static std::uint64_t operations = 0;
  return operations;
}

/// A double that counts the operations on it.
struct Counted {
  double value = 0.0;

  Counted() = default;
  Counted(double v) : value(v) {}
};

inline Counted after(double value, std::uint64_t operations) {
  counted() += operations;
  return value;
}

inline Counted operator+(Counted a, Counted b) { return after(a.value + b.value, 1); }
inline Counted operator-(Counted a, Counted b) { return after(a.value - b.value, 1); }
inline Counted operator*(Counted a, Counted b) { return after(a.value * b.value, 1); }
inline Counted operator/(Counted a, Counted b) { return after(a.value / b.value, 1); }
inline Counted operator-(Counted a) { return -a.value; }
inline Counted& operator+=(Counted& a, Counted b) { return a = a + b; }
inline Counted& operator-=(Counted& a, Counted b) { return a = a - b; }
inline bool operator>(Counted a, Counted b) { return a.value > b.value; }
inline bool operator>=(Counted a, Counted b) { return a.value >= b.value; }
inline Counted select(bool which, Counted yes, Counted no) { return which ? yes : no; }
inline Counted max(Counted a, Counted b) { return std::max(a.value, b.value); }
inline Counted min(Counted a, Counted b) { return std::min(a.value, b.value); }
inline Counted abs(Counted a) { return std::abs(a.value); }
inline Counted sqrt(Counted a) { return after(std::sqrt(a.value), 1); }
inline Counted exp(Counted a) { return after(std::exp(a.value), of_exp); }
inline Counted log(Counted a) { return after(std::log(a.value), of_log); }
inline Counted pow(Counted x, Counted y) { return exp(y * log(x)); }
inline Counted cbrt(Counted x) { return after(std::cbrt(x.value), of_exp + of_log + 1); }

template <>
struct Memory<Counted> {
  using Each = double;
  static constexpr std::size_t columns = 1;
  static Counted load(const double* from) { return *from; }
  static void store(Counted number, double* to) { *to = number.value; }
};

inline std::uint64_t count(const ColumnCase& column, const SiteWeather& weather,
                           const SolverSettings& settings) {
  const std::array<const ColumnCase*, 1> cases{&column};
  ColumnSolution solution;
  ColumnWorkspace workspace;
  const ColumnBatch batch(weather, settings, cases);
  ColumnLanes<Counted> lanes(batch, cases, std::span(&solution, 1), workspace);
  counted() = 0;
  lanes.run();
  return counted();
}

}  // namespace HWY_NAMESPACE

namespace bench {

std::uint64_t operations_of_column(const ColumnCase& column, const SiteWeather& weather,
                                   const SolverSettings& settings) {
  return HWY_NAMESPACE::count(column, weather, settings);
}

}  // namespace bench
}  // namespace slabtide
