#pragma once

#include <cstddef>
#include <optional>

#include "slabtide/core/civil_time.h"
#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/joints/cut_plan.h"
#include "slabtide/job/model/job.h"

// When the saw really runs: by the crew's hours where a crew is planned. `CutPlan` itself knows of
// no crew; every sheet that tells an hour of the saw asks here.

namespace slabtide {

/// All cuts with one saw of a kind: in the zones that are sawn with it as the crew comes to them,
/// each with its task (`SawnCut::task`); in the others as the saw could, if somebody led it. In the
/// order of their starts.
SawShift worked_shift(SawKind kind, const CutPlan& cuts, const CrewPlan& crew);

/// When a saw is on the first of a zone's cuts; empty where it is on none.
std::optional<UtcTime> first_start(const SawShift& shift, const CutPlan& cuts, std::size_t zone);

/// The saw in a zone.
struct ZoneSawing {
  SawKind kind = SawKind::early_entry;
  bool can_be_in_time = false;    ///< with somebody to lead it, it makes every cut of the zone by
                                  ///< when that is due
  std::optional<UtcTime> starts;  ///< on the zone's first cut, as the crew comes to it; absent
                                  ///< after the forecast's end
  std::optional<UtcTime> due;     ///< when the first cut due must be through; absent likewise
  int late_min = 0;  ///< how long after it is due the latest of its cuts is through, whole minutes

  bool in_time() const { return can_be_in_time && late_min == 0; }
};

/// Which saw a zone is cut with, and when: of the way chosen, or of the first saw to be had where
/// none can be in time. Empty where nothing is cut.
/// Error: std::out_of_range for a zone that the plan does not have.
std::optional<ZoneSawing> sawing_of(const CutPlan& cuts, const CrewPlan& crew, const Job& job,
                                    std::size_t zone);

/// The cut that the day's sawing begins with, and with which saw; empty where nothing is sawn.
struct FirstCut {
  SawKind kind = SawKind::early_entry;
  SawnCut cut;
};
std::optional<FirstCut> first_cut(const CutPlan& cuts, const CrewPlan& crew);

/// Of the zones that are sawn, the one whose first cut is due first; empty where none is due.
std::optional<std::size_t> first_due_zone(const CutPlan& cuts);

/// Of the zones that no saw on hand cuts in time, the one whose first cut is due first.
std::optional<std::size_t> first_without_saw(const CutPlan& cuts);

}  // namespace slabtide
