#pragma once

#include <optional>

#include "slabtide/day/pour_run.h"
#include "slabtide/day/practice.h"

namespace slabtide {

/// When the saw can start and must be done.
struct SawPlan {
  SawKind kind = SawKind::early_entry;
  bool on_hand = false;
  std::optional<UtcTime> opens;
  std::optional<UtcTime> open_all_over;
  std::optional<UtcTime> stress_limit;   ///< stress reaches half the tensile strength
  std::optional<UtcTime> stress_late;    ///< and seven tenths
  std::optional<UtcTime> surface_limit;  ///< surface `surface_fall_k` under its peak
  double surface_fall_k = 0.0;
  std::optional<UtcTime> latest;  ///< the earlier of the two limits: be done by then
  double depth_m = 0.0;
  bool too_late = false;  ///< opens only after `latest`
};

/// The length of the zone as one uncut piece: a walk's line, an outline's longer side.
double uncut_length_m(const Zone& zone);

/// True where the outline has a corner that points into the slab.
bool has_re_entrant_corner(const Zone& zone);

/// The saw's window on a zone that is not yet jointed.
SawPlan plan_saw(SawKind kind, const Zone& zone, const ZoneRun& zone_run, const Job& job,
                 const PourRun& run, const Practice& practice);

}  // namespace slabtide
