#include "rounded.h"

#include <cmath>

namespace slabtide {

double rounded(double value, int decimals) {
  const double parts = std::pow(10.0, decimals);
  const double result = std::round(value * parts) / parts;
  return result == 0.0 ? 0.0 : result;
}

}  // namespace slabtide
