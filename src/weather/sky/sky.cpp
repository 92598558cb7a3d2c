#include "sky.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

// Clark & Allen 1978: a + b ln(Tdp/273). The 273 K is theirs, not 273.15.
constexpr double clear_a = 0.787;
constexpr double clear_b = 0.764;
constexpr double reference_k = 273.0;

// Walton 1983: cubic in the cloud tenths.
constexpr double cloud_1 = 0.0224;
constexpr double cloud_2 = -0.0035;
constexpr double cloud_3 = 0.00028;
constexpr double tenths = 10.0;

constexpr double lowest_dew_point_c = -100.0;

}  // namespace

double sky_emissivity(double dew_point_c, double cloud_fraction) {
  if (!(dew_point_c >= lowest_dew_point_c && std::isfinite(dew_point_c)))
    throw std::invalid_argument("sky: the dew point is not a temperature of air");
  if (!(cloud_fraction >= 0.0 && cloud_fraction <= 1.0))
    throw std::invalid_argument("sky: the cloud share is not within 0 to 1");
  const double n = tenths * cloud_fraction;
  const double clear = clear_a + clear_b * std::log(kelvin_from_celsius(dew_point_c) / reference_k);
  const double clouded = clear * (1.0 + n * (cloud_1 + n * (cloud_2 + n * cloud_3)));
  return std::clamp(clouded, 0.0, 1.0);
}

}  // namespace slabtide
