#pragma once

#include <cstddef>
#include <deque>
#include <memory>
#include <mutex>
#include <vector>

#include "cut_order.h"
#include "slabtide/day/joints/joints.h"

namespace slabtide {

/// What the cuts of one job's pours have in common, kept from plan to plan: the joints, and the
/// orders in which they were cut. It is for jobs with the same zones, obstacles, aggregate and
/// joint rules. Several threads may ask.
class CutMemo {
 public:
  /// One entry per zone.
  explicit CutMemo(std::vector<ZoneJoints> joints)
      : joints_(std::move(joints)), courses_(joints_.size()) {}

  const std::vector<ZoneJoints>& joints() const { return joints_; }
  /// As `order_cuts`. Error: as there, and std::out_of_range for a zone without joints.
  std::vector<Cut> order_cuts(std::size_t zone, const Zone& described,
                              const std::vector<JointTurn>& turns);

 private:
  std::vector<ZoneJoints> joints_;
  std::mutex mutex_;
  std::vector<std::vector<std::shared_ptr<const CutCourse>>> courses_;  ///< of each zone
};

}  // namespace slabtide
