#include "curve.h"

// Boost 1.74 pchip calls ::isnan, which <cmath> need not declare.
#include <math.h>  // NOLINT(modernize-deprecated-headers,hicpp-deprecated-headers)

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <memory>
#include <stdexcept>
#include <utility>

#include <boost/math/interpolators/pchip.hpp>

namespace slabtide {
namespace {

using Pchip = boost::math::interpolators::pchip<std::vector<double>>;
constexpr std::size_t min_pchip_points = 4;

// Fritsch & Carlson 1980: slopes up to three times the secant keep a cubic monotone.
constexpr double monotone_limit = 3.0;

void require_times(const std::vector<double>& times_s) {
  if (times_s.empty()) throw std::invalid_argument("curve: no points");
  if (std::adjacent_find(times_s.begin(), times_s.end(), std::not_fn(std::less{})) != times_s.end())
    throw std::invalid_argument("curve: times do not rise");
}

void require_finite(const std::vector<double>& values) {
  if (!std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); }))
    throw std::invalid_argument("curve: a value is not finite");
}

/// The index of the span that contains `s`; both ends of `edges_s` belong to a span.
std::size_t span_of(const std::vector<double>& edges_s, double s) {
  const auto after = std::upper_bound(edges_s.begin(), edges_s.end(), s);
  const auto index = static_cast<std::size_t>(std::distance(edges_s.begin(), after));
  return std::clamp<std::size_t>(index, 1, edges_s.size() - 1) - 1;
}

/// Straight lines through at most three points.
struct Polyline {
  std::vector<double> times_s;
  std::vector<double> values;

  double operator()(double s) const {
    if (values.size() == 1) return values.front();
    const double inside_s = std::clamp(s, times_s.front(), times_s.back());
    const std::size_t i = span_of(times_s, inside_s);
    const double fraction = (inside_s - times_s[i]) / (times_s[i + 1] - times_s[i]);
    return std::lerp(values[i], values[i + 1], fraction);
  }
};

struct MeanKeeping {
  std::vector<double> edges_s;
  std::vector<double> means;
  std::vector<double> at_edges;

  double operator()(double s) const {
    const double inside_s = std::clamp(s, edges_s.front(), edges_s.back());
    const std::size_t i = span_of(edges_s, inside_s);
    const double u = (inside_s - edges_s[i]) / (edges_s[i + 1] - edges_s[i]);
    // The parabola with these end values and this mean; rounding may leave it slightly below 0.
    return std::max(0.0, at_edges[i] * (1.0 - u) * (1.0 - 3.0 * u) +
                             at_edges[i + 1] * u * (3.0 * u - 2.0) +
                             means[i] * 6.0 * u * (1.0 - u));
  }
};

/// The value at the edge between spans i - 1 and i.
double inner_edge_value(const std::vector<double>& edges_s, const std::vector<double>& means,
                        std::size_t i) {
  const double before_s = edges_s[i] - edges_s[i - 1];
  const double after_s = edges_s[i + 1] - edges_s[i];
  const double mean = (means[i - 1] * after_s + means[i] * before_s) / (before_s + after_s);
  return std::min(mean, monotone_limit * std::min(means[i - 1], means[i]));
}

/// The value at an outer edge: a straight continuation, within the same limits.
double outer_edge_value(double mean, double inner_edge) {
  return std::clamp(2.0 * mean - inner_edge, 0.0, monotone_limit * mean);
}

std::vector<double> edge_values(const std::vector<double>& edges_s,
                                const std::vector<double>& means) {
  if (means.size() == 1) return {means[0], means[0]};
  std::vector<double> values(edges_s.size());
  for (std::size_t i = 1; i + 1 < values.size(); ++i)
    values[i] = inner_edge_value(edges_s, means, i);
  values.front() = outer_edge_value(means.front(), values[1]);
  values.back() = outer_edge_value(means.back(), values[values.size() - 2]);
  return values;
}

}  // namespace

Curve monotone_curve(std::vector<double> times_s, std::vector<double> values) {
  require_times(times_s);
  require_finite(times_s);
  require_finite(values);
  if (times_s.size() != values.size())
    throw std::invalid_argument("curve: as many values as times are needed");
  if (times_s.size() < min_pchip_points)
    return Polyline{.times_s = std::move(times_s), .values = std::move(values)};
  const double first_s = times_s.front();
  const double last_s = times_s.back();
  return [first_s, last_s, cubic = Pchip(std::move(times_s), std::move(values))](double s) {
    return cubic(std::clamp(s, first_s, last_s));
  };
}

Curve mean_keeping_curve(std::vector<double> edges_s, std::vector<double> means) {
  require_times(edges_s);
  require_finite(edges_s);
  require_finite(means);
  if (means.empty() || edges_s.size() != means.size() + 1)
    throw std::invalid_argument("curve: one edge more than means is needed");
  if (*std::min_element(means.begin(), means.end()) < 0.0)
    throw std::invalid_argument("curve: a mean is negative");
  std::vector<double> at_edges = edge_values(edges_s, means);
  return MeanKeeping{std::move(edges_s), std::move(means), std::move(at_edges)};
}

}  // namespace slabtide
