#include "heat_index.h"

#include <cmath>
#include <stdexcept>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// The simple form, which holds for mild air; °F and percent.
double simple_index_f(double t, double r) {
  return 0.5 * (t + 61.0 + (t - 68.0) * 1.2 + r * 0.094);
}

/// The regression of SR 90-23, °F and percent.
double regression_f(double t, double r) {
  return -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 6.83783e-3 * t * t -
         5.481717e-2 * r * r + 1.22874e-3 * t * t * r + 8.5282e-4 * t * r * r -
         1.99e-6 * t * t * r * r;
}

/// What is added to the regression in dry and in moist air, °F.
double adjustment_f(double t, double r) {
  constexpr double hot_f = 80.0;
  if (r < 13.0 && t >= hot_f && t <= 112.0) {
    return -(13.0 - r) / 4.0 * std::sqrt((17.0 - std::abs(t - 95.0)) / 17.0);
  }
  if (r > 85.0 && t >= hot_f && t <= 87.0) return (r - 85.0) / 10.0 * (87.0 - t) / 5.0;
  return 0.0;
}

}  // namespace

double heat_index_c(double air_c, double humidity_fraction) {
  if (!(std::isfinite(air_c) && humidity_fraction >= 0.0 && humidity_fraction <= 1.0)) {
    throw std::invalid_argument("heat_index_c: no such air");
  }
  const double t = fahrenheit_from_celsius(air_c);
  const double r = 100.0 * humidity_fraction;
  constexpr double regression_from_f = 80.0;
  const double mild = 0.5 * (simple_index_f(t, r) + t);
  if (mild < regression_from_f) return celsius_from_fahrenheit(mild);
  return celsius_from_fahrenheit(regression_f(t, r) + adjustment_f(t, r));
}

}  // namespace slabtide
