#pragma once

#include <cstddef>

// How the columns' steps grow.

namespace slabtide {

/// What times since placing, in single precision, tell apart in a week.
inline constexpr double same_instant_s = 0.1;
inline constexpr double forever_s = 1.0e9;

/// A step ends where a cover or a film comes on or goes, and at final set: so much after it, so
/// that it is past. What is nearer than the second figure is left to the next step.
inline constexpr double past_change_s = 0.5;
inline constexpr double too_near_s = 10.0;
/// Final set, curing cover, curing compound, evaporation film.
inline constexpr std::size_t changes_at_set_ages = 4;

/// The first step is taken in so many, each twice as long as the one before: the surface leaves the
/// temperature it was placed with ever more slowly.
inline constexpr int first_steps = 4;
/// After final set, from which stress counts, steps begin with this fraction of an early one, and
/// each is so many times as long as the one before until they are late steps.
inline constexpr double first_late_fraction = 0.5;
inline constexpr double step_growth = 1.5;

/// The length of a step, in early steps, after so many were taken.
constexpr double fraction_of_early_step(int taken) {
  constexpr double shares = (1 << first_steps) - 1;
  return taken < first_steps ? (1 << taken) / shares : 1.0;
}

}  // namespace slabtide
