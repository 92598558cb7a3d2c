#pragma once

#include <cstddef>
#include <vector>

namespace slabtide {

/// How many of a crew are at work through the day, as steps.
class CrewLoad {
 public:
  explicit CrewLoad(int crew) : crew_(crew) {}

  /// The first start from `from_min` on at which `hands` are free for `duration_min`.
  int first_free(int from_min, int duration_min, int hands) const;
  void take(int start_min, int end_min, int hands);
  /// Undoes a `take`, in any order.
  void give_back(int start_min, int end_min, int hands);

 private:
  struct Step {
    int from_min = 0;
    int busy = 0;  ///< until the next step; nobody before the first step
  };
  /// Index of the step that begins at `at_min`, made where there is none.
  std::size_t step_at(int at_min);
  /// A step that changes nothing goes, so that the steps are no more than what is taken needs.
  void drop_if_idle(std::size_t step);

  int crew_;
  std::vector<Step> steps_;
};

}  // namespace slabtide
