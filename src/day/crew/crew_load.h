#pragma once

#include <cstddef>
#include <vector>

namespace slabtide {

/// How many of a crew are at work through the day, as a step function.
class CrewLoad {
 public:
  explicit CrewLoad(int crew) : crew_(crew) {}

  /// The first start at or after `from_min` at which `hands` are free for `duration_min`.
  int first_free(int from_min, int duration_min, int hands) const;
  void take(int start_min, int end_min, int hands);
  /// Undoes a `take`, in any order.
  void give_back(int start_min, int end_min, int hands);

 private:
  struct Step {
    int from_min = 0;
    int busy = 0;  ///< until the next step; nobody is busy before the first step
  };
  /// Index of the step that begins at `at_min`, which is created if necessary.
  std::size_t step_at(int at_min);
  /// Removes a step that changes nothing, so that there are no more steps than needed.
  void drop_if_idle(std::size_t step);

  int crew_;
  std::vector<Step> steps_;
};

}  // namespace slabtide
