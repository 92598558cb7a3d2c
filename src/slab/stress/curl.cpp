#include "curl.h"

#include <cmath>
#include <stdexcept>

namespace slabtide {
namespace {

constexpr double poisson_ratio = 0.15;  // usual for concrete
constexpr double plate_factor = 12.0;
constexpr double root_eight = 2.8284271247461903;
constexpr double very_long = 200.0;  // cosh overflows beyond; C is 1 to the last bit here

}  // namespace

double relative_stiffness_radius_m(double modulus_pa, double thickness_m, double subgrade_pa_m) {
  if (!(modulus_pa > 0.0 && thickness_m > 0.0 && subgrade_pa_m > 0.0))
    throw std::invalid_argument("relative stiffness: modulus, thickness and subgrade above 0");
  const double h3 = thickness_m * thickness_m * thickness_m;
  return std::sqrt(std::sqrt(
      modulus_pa * h3 / (plate_factor * (1.0 - poisson_ratio * poisson_ratio) * subgrade_pa_m)));
}

double curl_coefficient(double length_over_radius) {
  if (!(length_over_radius >= 0.0))
    throw std::invalid_argument("curl coefficient: length over radius is not 0 or more");
  if (length_over_radius > very_long) return 1.0;
  const double x = length_over_radius / root_eight;
  if (x < 1.0e-3) return 0.0;  // C grows with x^4: under 1e-11 here, which is all rounding
  // tan + tanh over the products: cos x cosh x (tan x + tanh x) = sin x cosh x + cos x sinh x.
  const double s = std::sin(x);
  const double c = std::cos(x);
  const double sh = std::sinh(x);
  const double ch = std::cosh(x);
  return 1.0 - (s * ch + c * sh) / (s * c + sh * ch);
}

}  // namespace slabtide
