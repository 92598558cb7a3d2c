#include "chart_axes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace slabtide {

namespace {

constexpr std::array<double, 3> round_steps{1.0, 2.0, 5.0};
/// Allowance for rounding, as a fraction of a step.
constexpr double hair = 1e-9;
constexpr int max_decimals = 4;

std::vector<double> multiples(double low, double high, double step) {
  std::vector<double> ticks;
  const long last = std::lround(std::floor(high / step + hair));
  for (long k = std::lround(std::ceil(low / step - hair)); k <= last; ++k) {
    ticks.push_back(static_cast<double>(k) * step);
  }
  return ticks;
}

}  // namespace

AxisScale::AxisScale(Kind kind, double low, double high, double at_low, double at_high)
    : kind_(kind), low_(low), high_(high), at_low_(at_low), at_high_(at_high) {
  if (!(low < high)) throw std::invalid_argument("AxisScale: not from low to high");
  if (kind == Kind::logarithmic && !(low > 0.0)) {
    throw std::invalid_argument("AxisScale: no logarithm of what is not positive");
  }
}

double AxisScale::place(double value) const {
  const double held = std::clamp(value, low_, high_);
  const double fraction = kind_ == Kind::straight ? (held - low_) / (high_ - low_)
                                                  : std::log(held / low_) / std::log(high_ / low_);
  return at_low_ + (at_high_ - at_low_) * fraction;
}

std::vector<double> round_ticks(double low, double high, std::size_t max) {
  if (!(low < high) || max < 2) throw std::invalid_argument("round_ticks: no range");
  double power = std::pow(10.0, std::floor(std::log10((high - low) / static_cast<double>(max))));
  while (true) {
    for (const double step : round_steps) {
      std::vector<double> ticks = multiples(low, high, step * power);
      if (ticks.size() <= max) return ticks;
    }
    power *= 10.0;
  }
}

std::vector<double> decade_ticks(double low, double high) {
  if (!(low > 0.0) || !(low < high)) throw std::invalid_argument("decade_ticks: no range");
  std::vector<double> ticks;
  const long last = std::lround(std::floor(std::log10(high) + hair));
  for (long k = std::lround(std::ceil(std::log10(low) - hair)); k <= last; ++k) {
    ticks.push_back(std::pow(10.0, k));
  }
  return ticks;
}

int decimals_of(const std::vector<double>& ticks) {
  for (int decimals = 0; decimals < max_decimals; ++decimals) {
    const double power = std::pow(10.0, decimals);
    const bool whole = std::all_of(ticks.begin(), ticks.end(), [&](double tick) {
      return std::abs(tick * power - std::round(tick * power)) < hair * power;
    });
    if (whole) return decimals;
  }
  return max_decimals;
}

}  // namespace slabtide
