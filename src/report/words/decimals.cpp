#include "decimals.h"

#include <cmath>

#include <fmt/format.h>

namespace slabtide {

namespace {

double rounded(double value, double parts) {
  const double result = std::round(value * parts) / parts;
  return result == 0.0 ? 0.0 : result;
}

}  // namespace

double tenths(double value) { return rounded(value, 10.0); }

double hundredths(double value) { return rounded(value, 100.0); }

double thousandths(double value) { return rounded(value, 1000.0); }

std::string fixed_words(double value, int decimals) {
  return fmt::format("{:.{}f}", rounded(value, std::pow(10.0, decimals)), decimals);
}

}  // namespace slabtide
