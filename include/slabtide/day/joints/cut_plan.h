#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

#include "slabtide/day/joints/joints.h"
#include "slabtide/day/joints/saw_shift.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/part_plan.h"

namespace slabtide {

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

/// The joints of every zone, their cuts in working order with their times, the cuts made with one
/// saw of each kind, and the ways of jointing that are then possible.
///
/// `joints`, if given, are those of a job with the same zones, obstacles, aggregate and rules, and
/// are not computed again. Error: std::invalid_argument if there is not one entry per zone.
CutPlan plan_cuts(const Job& job, const PourRun& run, const Practice& practice,
                  const std::vector<ZoneJoints>* joints = nullptr);

}  // namespace slabtide
