#pragma once

// How the columns' steps grow.

namespace slabtide {

inline constexpr double same_instant_s = 1.0e-6;

/// The first step is taken in so many, each twice as long as the one before: placing lays warm on
/// cold, which two minutes at once leave 0.1 K off at the surface.
inline constexpr int first_steps = 3;
/// From early to late steps in some leaps, so that the surface takes no jolt of 0.2 K.
inline constexpr double step_growth = 1.5;

/// The length of a step, in early steps, after so many were taken.
constexpr double fraction_of_early_step(int taken) {
  constexpr double shares = (1 << first_steps) - 1;
  return taken < first_steps ? (1 << taken) / shares : 1.0;
}

}  // namespace slabtide
