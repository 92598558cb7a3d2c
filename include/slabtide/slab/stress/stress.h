#pragma once

#include <optional>
#include <vector>

#include "slabtide/slab/column/column.h"
#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// The uncut piece of slab for which the stress is computed.
struct StressCase {
  double uncut_length_m = 0.0;
  double thickness_m = 0.0;
  bool tied = false;
  bool re_entrant_corner = false;
};

/// Tension at the worse face over tensile strength at each instant of the history; 0 before final
/// set and when both faces are in compression.
///
/// Idealises: no stress at final set; curling stress linear through the depth, so that it is
/// opposite at the two faces; the modulus of the moment; one relaxation factor.
/// Symbols: top = m + c, bottom = m - c, of which the larger counts; c = 0.5 C E alpha dG, dG how
/// far top minus bottom has fallen since final set, C Bradbury's coefficient (curl.h); m = 0.8 E
/// alpha dT for a tied slab, dT how far the mean has fallen, else E alpha dT limited to friction's
/// +-gamma f L/2; times 0.65, times 1.5 at a re-entrant corner.
/// Sources: friction AASHTO (published), relaxation CIRIA C660 (from memory), the rest ours.
/// The mean counts with its sign, not only when the slab cools. A slab that the sun warms after
/// final set is in compression, and does not crack at noon because its top is warm.
std::vector<double> stress_ratio(const ColumnHistory& history, const MixModel& mix,
                                 const StressCase& piece);

/// When the ratio first reaches `level`, in seconds, interpolated linearly; empty if it never does.
/// Stops there, which makes it fast.
std::optional<double> stress_reaches_s(const ColumnHistory& history, const MixModel& mix,
                                       const StressCase& piece, double level);

}  // namespace slabtide
