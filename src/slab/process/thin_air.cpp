#include "thin_air.h"

#include <cmath>
#include <stdexcept>

#include "slab/process/convection-inl.h"
#include "slabtide/weather/air/moist_air.h"

namespace slabtide {
namespace {

constexpr double natural_exponent = 2.0 / 3.0;  // Gr is proportional to the density squared
constexpr double still_evaporation_exponent = natural_exponent - 1.0;

}  // namespace

ThinAir thin_air(double air_pressure_pa) {
  if (!(air_pressure_pa > 0.0 && std::isfinite(air_pressure_pa)))
    throw std::invalid_argument("thin air: the pressure is not positive");
  const double fraction = air_pressure_pa / sea_level_pressure_pa;
  return {
      .natural_convection = std::pow(fraction, natural_exponent),
      .forced_over_natural = std::pow(fraction, HWY_NAMESPACE::forced_exponent - natural_exponent),
      .still_evaporation = std::pow(fraction, still_evaporation_exponent)};
}

}  // namespace slabtide
