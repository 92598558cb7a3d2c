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
/// Idealises: free of stress at final set; curling straight through the depth, so that the
/// faces have it with opposite signs; each step's stress by the modulus of that step, relaxing from
/// then on whatever its age.
/// Symbols: top = m + c, bottom = m - c, of which the larger; c = 0.5 C sum E alpha dG R, dG how
/// far top less bottom falls in a step, C Bradbury's coefficient (curl.h); m = 0.8 sum E alpha dT R
/// for a tied slab, dT how far the mean falls in a step, else sum E alpha dT R, of which what is
/// over friction's +-gamma f L/2 slips as it comes; R = 0.63 + 0.15 exp(-t/12 h) + 0.22 exp(-t/1
/// h), t since that step; times 1.5 at a re-entrant corner. Sources: friction AASHTO (published); R
/// by creep of CEB-FIP Model Code 1990 with the ageing coefficient 0.8 of Trost and Bazant (from
/// memory), 0.65 after a day as CIRIA C660 has it (from memory); the rest ours. The mean counts
/// with its sign, not only when it cools. A slab that the sun warms after final set is pressed, and
/// does not crack at noon for being warm on top.
std::vector<double> stress_ratio(const ColumnHistory& history, const MixModel& mix,
                                 const StressCase& piece);

/// When the ratio first reaches `level`, in seconds, interpolated linearly; empty if it never does.
/// Stops there, which makes it fast.
std::optional<double> stress_reaches_s(const ColumnHistory& history, const MixModel& mix,
                                       const StressCase& piece, double level);

}  // namespace slabtide
