#include "cut_memo.h"

#include <algorithm>
#include <utility>

namespace slabtide {

std::vector<Cut> CutMemo::order_cuts(std::size_t zone, const Zone& described,
                                     const std::vector<JointTurn>& turns) {
  std::unique_lock<std::mutex> lock(mutex_);
  CutCourses known(courses_.at(zone));
  lock.unlock();
  auto course = std::make_shared<const CutCourse>(
      course_of_cuts(described, joints_[zone], turns, std::move(known)));
  lock.lock();
  auto& kept = courses_[zone];
  if (std::none_of(kept.begin(), kept.end(),
                   [&](const auto& other) { return other->joints == course->joints; })) {
    kept.push_back(course);
  }
  return course->cuts;
}

}  // namespace slabtide
