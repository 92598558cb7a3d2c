#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/band.h"
#include "slabtide/day/windows/part_plan.h"

namespace slabtide {

/// When sawing can start and must be finished. It starts when the first tenth of the area can be
/// sawn, even if the rest of the zone has not set, because the worker stands on what is being sawn.
struct SawPlan {
  SawKind kind = SawKind::early_entry;
  bool on_hand = false;
  std::optional<UtcTime> opens;
  std::optional<UtcTime> open_all_over;
  std::optional<UtcTime> stress_limit;   ///< when the stress reaches half the tensile strength
  std::optional<UtcTime> stress_late;    ///< when it reaches seven tenths
  std::optional<UtcTime> surface_limit;  ///< when the surface is `surface_fall_k` below its peak
  double surface_fall_k = 0.0;
  std::optional<UtcTime> sheen_gone;   ///< the zone's
  std::optional<UtcTime> latest;       ///< the earlier of the two limits: finished by then
  std::optional<TimeBand> opens_band;  ///< how sure it is, if the plan has bands
  std::optional<TimeBand> latest_band;
  double depth_m = 0.0;
  bool too_late = false;  ///< some of it opens only after it must be cut
};

/// The same as an operation's window, which closes when the cuts must be finished.
OperationWindow window_of(const SawPlan& saw);

/// The length of the zone as one uncut piece: a walkway's line, or the longer side of the smallest
/// box around an outline.
/// Error: std::invalid_argument for an outline with a fault (`outline_fault`).
double uncut_length_m(const Zone& zone);

/// When a column can be sawn, in seconds from the grid's start: hard enough to stand on, and strong
/// enough for the blade not to ravel the edge.
std::optional<double> saw_opens_s(SawKind kind, const ColumnHistory& history, Aggregate aggregate,
                                  const Practice& practice);

/// When the surface has cooled by the trade's limit from its maximum since initial set.
std::optional<double> surface_fallen_s(const ColumnHistory& history, const Practice& practice);

/// How deep a cut must be, m.
double saw_depth_m(SawKind kind, double thickness_m, const SawRules& saw);

/// The windows on a zone without any cuts: the early-entry saw's, then the wet saw's.
std::vector<SawPlan> plan_saws(const Zone& zone, const ZoneRun& zone_run, const Job& job,
                               const PourRun& run, const Practice& practice);

}  // namespace slabtide
