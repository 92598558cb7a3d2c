#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "slabtide/day/joints/cut.h"
#include "slabtide/job/model/zone.h"

namespace slabtide {

/// Where a joint is and when it can be cut.
struct JointTurn {
  double along_m = 0.0;  ///< distance from where placing began
  double ready_s = 0.0;  ///< when the first saw can be used on it
};

/// The joints of a zone in working order: first from inside corners, then from the tied edge, then
/// the middle of the longest uncut run, then one after another from the end that is ready first
/// (those parallel to the middle one before those across). `turns` has one entry per joint. Source:
/// common practice, no source; the choice of the end to begin at is ours. Error:
/// std::invalid_argument for an outline with a fault (`outline_fault`), a joint of length 0, a
/// number of turns that differs from that of joints, and a turn that is not finite.
std::vector<Cut> order_cuts(const Zone& zone, const ZoneJoints& joints,
                            const std::vector<JointTurn>& turns);

/// How the joints of a zone came into their working order.
struct CutCourse {
  std::vector<std::size_t> joints;
  std::vector<Cut> cuts;  ///< one for each of `joints`
  /// After so many cuts, which joint divided the longest piece most evenly, if one did.
  std::map<std::size_t, std::optional<std::size_t>> middles;
};

/// Courses of one zone's joints, followed as long as the same cuts are taken: what is cut out by
/// then, and all that depends on it, is then the same.
class CutCourses {
 public:
  CutCourses() = default;
  explicit CutCourses(std::vector<std::shared_ptr<const CutCourse>> courses)
      : courses_(std::move(courses)) {}

  /// The cut of this joint, taken next; null if no course goes on with it. Valid as long as the
  /// course is.
  const Cut* take(std::size_t joint);
  /// What the courses know of the middle now; null if nothing.
  const std::optional<std::size_t>* middle() const;

 private:
  std::vector<std::shared_ptr<const CutCourse>> courses_;  ///< that took the same cuts up to here
  std::size_t taken_ = 0;
};

/// As `order_cuts`; courses of the same zone and joints, if `known`, spare the work of dividing it
/// and change nothing.
CutCourse course_of_cuts(const Zone& zone, const ZoneJoints& joints,
                         const std::vector<JointTurn>& turns, CutCourses known);

}  // namespace slabtide
