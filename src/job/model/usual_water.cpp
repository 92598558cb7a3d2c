#include "usual_water.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

template <std::size_t Count>
struct Curve {
  std::array<double, Count> at;
  std::array<double, Count> values;

  /// Along straight lines; held at the ends.
  double operator()(double x) const {
    const auto above = std::upper_bound(at.begin() + 1, at.end() - 1, x);
    const auto i = static_cast<std::size_t>(above - at.begin());
    const double way = std::clamp((x - at[i - 1]) / (at[i] - at[i - 1]), 0.0, 1.0);
    return std::lerp(values[i - 1], values[i], way);
  }
};

}  // namespace

double usual_water_kg_m3(double slump_m, bool is_air_entrained) {
  constexpr Curve<3> plain_lb_yd3{{1.5, 3.5, 6.5}, {315.0, 340.0, 360.0}};
  constexpr Curve<3> air_lb_yd3{{1.5, 3.5, 6.5}, {280.0, 305.0, 325.0}};
  const double slump_in = in_from_m(slump_m);
  return kg_m3_from_lb_yd3(is_air_entrained ? air_lb_yd3(slump_in) : plain_lb_yd3(slump_in));
}

double usual_w_cm(double strength_psi, bool is_air_entrained) {
  constexpr Curve<5> plain{{2000.0, 3000.0, 4000.0, 5000.0, 6000.0},
                           {0.82, 0.68, 0.57, 0.48, 0.41}};
  constexpr Curve<4> air{{2000.0, 3000.0, 4000.0, 5000.0}, {0.74, 0.59, 0.48, 0.40}};
  return is_air_entrained ? air(strength_psi) : plain(strength_psi);
}

}  // namespace slabtide
