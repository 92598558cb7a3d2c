#pragma once

#include <optional>
#include <span>
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
/// then on; what comes just after final set relaxes almost wholly.
/// Symbols: top = m + c, bottom = m - c, of which the larger; c = 0.5 C sum E alpha dG R, dG how
/// far top less bottom falls in a step, C Bradbury's coefficient (curl.h); m = 0.8 sum E alpha dT R
/// for a tied slab, dT how far the mean falls in a step, else sum E alpha dT R, of which what is
/// over friction's +-gamma f L/2 slips as it comes; R = 1/(1 + 0.8 E dJ), dJ the creep since that
/// step: at a set age t (days) 128.9e-6 per MPa t/(t - t_f) 0.205 t^-0.4 in a day, 0.33 of it in
/// the first hour, t_f the set age at final set; R meets this after an hour and a day by parts that
/// fade in 8 h and half an hour, none of them below 0. Times 1.5 at a re-entrant corner. Sources:
/// friction AASHTO (published); creep of model B3 (Bazant & Baweja 1995, RILEM: q2, Q and the flow
/// term), made to rise toward set by t/(t - t_f) as Ostergaard, Lange, Altoubat & Stang 2001
/// (Tensile basic creep of early-age concrete, Cement and Concrete Research 31) fitted it to tests;
/// the ageing coefficient 0.8 of Trost and Bazant; all three from memory; the rest ours. The mean
/// counts with its sign, not only when it cools. A slab that the sun warms after final set is
/// pressed, and does not crack at noon for being warm on top.
std::vector<double> stress_ratio(const ColumnHistory& history, const MixModel& mix,
                                 const StressCase& piece);

/// When the ratio first reaches each of the levels, in seconds, interpolated linearly; empty if it
/// never does. Stops when all are reached, which makes it fast.
std::vector<std::optional<double>> stress_reaches_s(const ColumnHistory& history,
                                                    const MixModel& mix, const StressCase& piece,
                                                    std::span<const double> levels);

/// The same for one level.
std::optional<double> stress_reaches_s(const ColumnHistory& history, const MixModel& mix,
                                       const StressCase& piece, double level);

}  // namespace slabtide
