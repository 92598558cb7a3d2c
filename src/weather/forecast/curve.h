#pragma once

#include <functional>
#include <vector>

namespace slabtide {

/// A value by seconds from some origin. Outside its points the nearest end holds.
using Curve = std::function<double(double)>;

/// Through the points without overshoot: between two points the curve stays between them.
///
/// Four points or more: piecewise cubic Hermite with the slopes of Fritsch & Butland 1984, A
/// method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat.
/// Comput. 5 (Boost.Math pchip). Status: published. Fewer: straight lines.
/// Error: std::invalid_argument for no points, unequal counts, times that do not rise or
/// values that are not finite.
Curve monotone_curve(std::vector<double> times_s, std::vector<double> values);

/// A flow, never negative, whose mean between `edges_s[i]` and `edges_s[i + 1]` is `means[i]`.
///
/// The derivative of a monotone cubic through the running total: a parabola in each span,
/// joined without jumps. At an edge it takes the mean of the neighbours, each weighted by the
/// other's span, but at most three times the lesser (Fritsch & Carlson 1980, Monotone
/// piecewise cubic interpolation, SIAM J. Numer. Anal. 17: no parabola dips below 0).
/// Status: published method, this use is ours.
/// Error: as monotone_curve; also for one edge too few or too many, or a negative mean.
Curve mean_keeping_curve(std::vector<double> edges_s, std::vector<double> means);

}  // namespace slabtide
