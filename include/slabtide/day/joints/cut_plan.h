#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "slabtide/day/joints/joints.h"
#include "slabtide/day/joints/saw_shift.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/part_plan.h"
#include "slabtide/day/windows/saw_plan.h"

namespace slabtide {

class CutMemo;

/// How a zone's joints can be made.
enum class JointWay { none_needed, early_entry, wet, tool };

/// The id used in the JSON: "early_entry".
std::string_view joint_way_id(JointWay way);

/// Which ways of jointing a zone the day allows, and the one to use.
struct JointChoice {
  JointWay way = JointWay::none_needed;  ///< the way to use, with a saw on hand (either kind if the
                                         ///< job lists none)
  std::vector<SawKind> in_time;  ///< every kind of saw, on hand or not, that makes all cuts in time
  OperationWindow tooled;        ///< when joints can be tooled, while the concrete is plastic
};

/// The saw in a zone: one of its kind, led through all the job's cuts.
struct ZoneSawing {
  SawKind kind = SawKind::early_entry;
  bool in_time = false;           ///< it makes every cut of the zone by when that is due
  std::optional<UtcTime> starts;  ///< on the zone's first cut; absent after the forecast's end
  std::optional<UtcTime> due;     ///< when the first cut due must be through; absent likewise
};

/// Joints, cuts and saws of the whole day. `joints` and `choices` are parallel to Job::zones.
struct CutPlan {
  std::vector<ZoneJoints> joints;
  std::vector<PlannedCut> cuts;  ///< zone by zone, each in working order
  std::array<SawShift, kinds_of_saw.size()> shifts;
  std::vector<JointChoice> choices;

  const SawShift& shift(SawKind kind) const { return shifts[static_cast<std::size_t>(kind)]; }
};

/// When a saw of the kind is on the first of a zone's cuts; empty where it is on none.
std::optional<UtcTime> first_start(const CutPlan& plan, SawKind kind, std::size_t zone);

/// Which saw a zone is cut with, from when, and by when the first cut must be through: of the way
/// chosen, or of the first saw to be had where none is in time. Empty where nothing is cut.
/// Error: std::out_of_range for a zone that the plan does not have.
std::optional<ZoneSawing> sawing_of(const CutPlan& plan, const Job& job, std::size_t zone);

/// Of the zones that are cut, the one with the cut that is due first.
std::optional<std::size_t> zone_due_first(const CutPlan& plan);

/// The saws' windows of a zone, as far as its cuts tell them: each opens with the first cut that
/// takes the saw and must be done by the first that is due; empty where nothing is cut. `uncut` are
/// those of the zone in one piece (`plan_saw`), whose depth and stress beyond the limit stay.
std::vector<SawPlan> saws_of_cuts(std::vector<SawPlan> uncut, const CutPlan& plan,
                                  std::size_t zone);

/// The joints of every zone, their cuts in working order with their times, the cuts made with one
/// saw of each kind, and the ways of jointing that are then possible.
///
/// `memo`, if given, is of a job with the same zones, obstacles, aggregate and rules: what it keeps
/// is not computed again. Zones are planned on so many `threads`, as in SolverSettings; the cuts
/// are the same for any number. Error: std::invalid_argument if there is not one entry per zone.
CutPlan plan_cuts(const Job& job, const PourRun& run, const Practice& practice,
                  CutMemo* memo = nullptr, int threads = 1);

}  // namespace slabtide
