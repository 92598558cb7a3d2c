#include "irradiance.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace slabtide {
namespace {

// Haurwitz 1945.
constexpr double haurwitz_w_m2 = 1098.0;
constexpr double haurwitz_extinction = 0.059;

// Kasten & Czeplak 1980.
constexpr double overcast_loss = 0.75;
constexpr double cloud_exponent = 3.4;

constexpr double solar_constant_w_m2 = 1361.0;  // Kopp & Lean 2011

// Erbs, Klein & Duffie 1982, eq. 1: three branches of the clearness index.
constexpr double dull_limit = 0.22;
constexpr double dull_slope = -0.09;
constexpr double bright_limit = 0.8;
constexpr double bright_fraction = 0.165;
constexpr double middle_0 = 0.9511;
constexpr double middle_1 = -0.1604;
constexpr double middle_2 = 4.388;
constexpr double middle_3 = -16.638;
constexpr double middle_4 = 12.336;

constexpr double lowest_split_cos_zenith = 0.065;  // usual in solar work; no source

void require_cos(double cos_zenith) {
  if (!(std::abs(cos_zenith) <= 1.0))
    throw std::invalid_argument("irradiance: the cosine of the zenith is not within -1 to 1");
}

}  // namespace

double clear_sky_w_m2(double cos_zenith, double air_pressure_pa) {
  require_cos(cos_zenith);
  if (!(air_pressure_pa > 0.0 && std::isfinite(air_pressure_pa)))
    throw std::invalid_argument("irradiance: the air pressure is not positive");
  if (cos_zenith <= 0.0) return 0.0;
  const double air_fraction = air_pressure_pa / sea_level_pressure_pa;
  return haurwitz_w_m2 * cos_zenith * std::exp(-haurwitz_extinction * air_fraction / cos_zenith);
}

double cloud_transmission(double cloud_fraction) {
  if (!(cloud_fraction >= 0.0 && cloud_fraction <= 1.0))
    throw std::invalid_argument("irradiance: the cloud share is not within 0 to 1");
  return 1.0 - overcast_loss * std::pow(cloud_fraction, cloud_exponent);
}

double extraterrestrial_w_m2(double cos_zenith, double distance_au) {
  require_cos(cos_zenith);
  if (!(distance_au > 0.0 && std::isfinite(distance_au)))
    throw std::invalid_argument("irradiance: the sun's distance is not positive");
  return solar_constant_w_m2 / (distance_au * distance_au) * std::max(cos_zenith, 0.0);
}

double diffuse_fraction(double clearness) {
  if (!(clearness >= 0.0))
    throw std::invalid_argument("irradiance: the clearness index is negative");
  const double kt = clearness;
  if (kt <= dull_limit) return 1.0 + dull_slope * kt;
  if (kt > bright_limit) return bright_fraction;
  return middle_0 + kt * (middle_1 + kt * (middle_2 + kt * (middle_3 + kt * middle_4)));
}

SplitIrradiance split_irradiance(double global_w_m2, double cos_zenith, double distance_au) {
  if (!(global_w_m2 >= 0.0 && std::isfinite(global_w_m2)))
    throw std::invalid_argument("irradiance: negative or not a number");
  const double extraterrestrial = extraterrestrial_w_m2(cos_zenith, distance_au);
  if (cos_zenith < lowest_split_cos_zenith) return {0.0, global_w_m2};
  const double diffuse = global_w_m2 * diffuse_fraction(global_w_m2 / extraterrestrial);
  const double beam = std::min(global_w_m2 - diffuse, extraterrestrial);
  return {beam, global_w_m2 - beam};
}

}  // namespace slabtide
