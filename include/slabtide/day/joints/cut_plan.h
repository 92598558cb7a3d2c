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

/// Joints, cuts and saws of the whole day. `joints` and `choices` are parallel to Job::zones.
struct CutPlan {
  std::vector<ZoneJoints> joints;
  std::vector<PlannedCut> cuts;  ///< zone by zone, each in working order
  std::array<SawShift, kinds_of_saw.size()> shifts;
  std::vector<JointChoice> choices;

  const SawShift& shift(SawKind kind) const { return shifts[static_cast<std::size_t>(kind)]; }
};

/// The kind of saw that a way of jointing takes; empty for the others.
std::optional<SawKind> saw_of(JointWay way);

/// When the first of a zone's cuts that is due must be through; empty where none is due.
std::optional<UtcTime> first_due(const CutPlan& plan, std::size_t zone);

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
