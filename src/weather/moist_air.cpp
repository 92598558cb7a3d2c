#include "slabtide/weather/moist_air.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

// Hyland & Wexler 1983 over liquid water: ln p = c8/K + c9 + c10 K + c11 K² + c12 K³ + c13 ln K,
// numbered as in ASHRAE Fundamentals, psychrometrics, eq. 6.
constexpr double c8_k = -5800.2206;
constexpr double c9 = 1.3914993;
constexpr double c10_per_k = -0.048640239;
constexpr double c11_per_k2 = 4.1764768e-5;
constexpr double c12_per_k3 = -1.4452093e-8;
constexpr double c13 = 6.5459673;

constexpr double coldest_c = -100.0;
constexpr double hottest_c = 200.0;

// Magnus form, Alduchov & Eskridge 1996.
constexpr double magnus_a = 17.625;
constexpr double magnus_b_c = 243.04;
constexpr double magnus_hottest_c = 100.0;

// Standard atmosphere below 11 km.
constexpr double sea_level_pa = 101325.0;
constexpr double lapse_per_m = 2.25577e-5;
constexpr double pressure_exponent = 5.2559;
constexpr double lowest_m = -5000.0;
constexpr double highest_m = 11000.0;

constexpr double latent_heat_at_0c_j_kg = 2500.8e3;
constexpr double latent_heat_slope_j_kgk = 2.36e3;

void require_within(double value, double low, double high, const char* message) {
  if (!(value >= low && value <= high)) throw std::invalid_argument(message);
}

/// The exponent of the Magnus form: ln of saturation pressure over that at 0 °C.
double magnus_exponent(double air_c) {
  require_within(air_c, coldest_c, magnus_hottest_c, "Magnus form: not within -100 to 100 °C");
  return magnus_a * air_c / (magnus_b_c + air_c);
}

}  // namespace

double saturation_pressure_pa(double air_c) {
  require_within(air_c, coldest_c, hottest_c, "saturation pressure: not within -100 to 200 °C");
  const double k = kelvin_from_celsius(air_c);
  return std::exp(c8_k / k + c9 + k * (c10_per_k + k * (c11_per_k2 + k * c12_per_k3)) +
                  c13 * std::log(k));  // eq. 6
}

double vapour_pressure_pa(double dew_point_c) { return saturation_pressure_pa(dew_point_c); }

double dew_point_from_humidity_c(double air_c, double humidity_share) {
  if (!(humidity_share > 0.0 && humidity_share <= 1.0))
    throw std::invalid_argument("dew point: the relative humidity is not within 0 to 1");
  const double g = std::log(humidity_share) + magnus_exponent(air_c);
  return magnus_b_c * g / (magnus_a - g);
}

double humidity_share(double air_c, double dew_point_c) {
  const double share = std::exp(magnus_exponent(dew_point_c) - magnus_exponent(air_c));
  return std::min(share, 1.0);
}

double air_pressure_pa(double elevation_m) {
  require_within(elevation_m, lowest_m, highest_m, "air pressure: not within -5000 to 11000 m");
  return sea_level_pa * std::pow(1.0 - lapse_per_m * elevation_m, pressure_exponent);
}

double latent_heat_j_kg(double water_c) {
  if (!std::isfinite(water_c)) throw std::invalid_argument("latent heat: not a number");
  return latent_heat_at_0c_j_kg - latent_heat_slope_j_kgk * water_c;
}

}  // namespace slabtide
