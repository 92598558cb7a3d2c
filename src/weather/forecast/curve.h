#pragma once

#include <functional>
#include <vector>

namespace slabtide {

/// A value as a function of seconds from some origin. Outside its points the nearest end value
/// holds.
using Curve = std::function<double(double)>;

/// A curve through the points without overshoot: between two points it stays between their values.
///
/// Four points or more: piecewise cubic Hermite with the slopes of Fritsch & Butland 1984, A
/// method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat.
/// Comput. 5 (Boost.Math pchip). Status: published. Fewer: straight lines.
/// Error: std::invalid_argument for no points, unequal counts, times that do not increase or values
/// that are not finite.
Curve monotone_curve(std::vector<double> times_s, std::vector<double> values);

/// A flow, never negative, whose mean between `edges_s[i]` and `edges_s[i + 1]` is `means[i]`.
///
/// The derivative of a monotone cubic through the running total: a parabola in each span,
/// continuous at the edges. The value at an edge is the mean of the two neighbouring means, each
/// weighted by the other's span, but at most three times the smaller (Fritsch & Carlson 1980,
/// Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17: then no parabola goes below 0).
/// Status: published method, this use is ours.
/// Error: as monotone_curve; also for the wrong number of edges or a negative mean.
Curve mean_keeping_curve(std::vector<double> edges_s, std::vector<double> means);

}  // namespace slabtide
