#include "high_low_curve.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace slabtide {
namespace {

// Parton & Logan 1981, table 1, air at 1.5 m.
constexpr double high_after_noon_h = 1.86;     // a
constexpr double night_fall = 2.20;            // b, over a night's length
constexpr double low_after_sunrise_h = -0.17;  // c

void require_usable(const HighLowSpan& span, double hour) {
  if (!(span.rise_h < span.set_h && span.set_h < low_hour(span.next_rise_h)))
    throw std::invalid_argument("high and low: day or night is not positive");
  if (!(std::isfinite(span.low_c) && std::isfinite(span.high_c) && std::isfinite(span.next_low_c)))
    throw std::invalid_argument("high and low: a temperature is not finite");
  if (!(hour >= low_hour(span.rise_h) && hour <= low_hour(span.next_rise_h)))
    throw std::invalid_argument("high and low: the hour is outside the span");
}

/// The length of the half sine, D + 2a.
double half_sine_h(const HighLowSpan& span) {
  return span.set_h - span.rise_h + 2.0 * high_after_noon_h;
}

double day_c(const HighLowSpan& span, double hour) {
  const double m = hour - low_hour(span.rise_h);
  return span.low_c +
         (span.high_c - span.low_c) * std::sin(std::numbers::pi * m / half_sine_h(span));
}

double night_c(const HighLowSpan& span, double hour) {
  const double sunset_c = day_c(span, span.set_h);
  const double night_h = span.next_rise_h - span.set_h;
  const double to_low_h = low_hour(span.next_rise_h) - span.set_h;
  const double left_at_low = std::exp(-night_fall * to_low_h / night_h);
  const double toward_c = (span.next_low_c - sunset_c * left_at_low) / (1.0 - left_at_low);
  return toward_c + (sunset_c - toward_c) * std::exp(-night_fall * (hour - span.set_h) / night_h);
}

}  // namespace

double low_hour(double rise_h) { return rise_h + low_after_sunrise_h; }

double high_hour(const HighLowSpan& span) {
  return low_hour(span.rise_h) + half_sine_h(span) / 2.0;
}

double high_low_air_c(const HighLowSpan& span, double hour) {
  require_usable(span, hour);
  return hour <= span.set_h ? day_c(span, hour) : night_c(span, hour);
}

}  // namespace slabtide
