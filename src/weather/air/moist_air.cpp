#include "slabtide/weather/air/moist_air.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "weather/air/moist_air-inl.h"

namespace slabtide {
namespace {

constexpr double coldest_c = -100.0;
constexpr double hottest_c = 200.0;

// Magnus form, Alduchov & Eskridge 1996.
constexpr double magnus_a = 17.625;
constexpr double magnus_b_c = 243.04;
constexpr double magnus_hottest_c = 100.0;

// Standard atmosphere below 11 km.
constexpr double lapse_per_m = 2.25577e-5;
constexpr double pressure_exponent = 5.2559;
constexpr double lowest_m = -5000.0;
constexpr double highest_m = 11000.0;

void require_within(double value, double low, double high, const char* message) {
  if (!(value >= low && value <= high)) throw std::invalid_argument(message);
}

/// The exponent of the Magnus form: ln of the saturation pressure divided by that at 0 °C.
double magnus_exponent(double air_c) {
  require_within(air_c, coldest_c, magnus_hottest_c, "Magnus form: not within -100 to 100 °C");
  return magnus_a * air_c / (magnus_b_c + air_c);
}

}  // namespace

double saturation_pressure_pa(double air_c) {
  require_within(air_c, coldest_c, hottest_c, "saturation pressure: not within -100 to 200 °C");
  return HWY_NAMESPACE::saturation_pressure_pa(air_c);
}

double vapour_pressure_pa(double dew_point_c) { return saturation_pressure_pa(dew_point_c); }

double dew_point_from_humidity_c(double air_c, double humidity_fraction) {
  if (!(humidity_fraction > 0.0 && humidity_fraction <= 1.0))
    throw std::invalid_argument("dew point: the relative humidity is not within 0 to 1");
  const double g = std::log(humidity_fraction) + magnus_exponent(air_c);
  return magnus_b_c * g / (magnus_a - g);
}

double humidity_fraction(double air_c, double dew_point_c) {
  const double fraction = std::exp(magnus_exponent(dew_point_c) - magnus_exponent(air_c));
  return std::min(fraction, 1.0);
}

double air_pressure_pa(double elevation_m) {
  require_within(elevation_m, lowest_m, highest_m, "air pressure: not within -5000 to 11000 m");
  return sea_level_pressure_pa *
         std::pow(1.0 - lapse_per_m * elevation_m, pressure_exponent);  // eq. 3
}

double latent_heat_j_kg(double water_c) {
  if (!std::isfinite(water_c)) throw std::invalid_argument("latent heat: not a number");
  return HWY_NAMESPACE::latent_heat_j_kg(water_c);
}

}  // namespace slabtide
