#include "crew_load.h"

#include <algorithm>

namespace slabtide {

int CrewLoad::first_free(int from_min, int duration_min, int hands) const {
  const int max_busy = crew_ - hands;
  int start_min = from_min;
  // Start at the step that contains `from_min`; earlier steps are over.
  const auto later =
      std::upper_bound(steps_.begin(), steps_.end(), from_min,
                       [](int minute, const Step& step) { return minute < step.from_min; });
  const auto after = static_cast<std::size_t>(later - steps_.begin());
  for (std::size_t i = after == 0 ? 0 : after - 1; i < steps_.size(); ++i) {
    if (steps_[i].from_min >= start_min + duration_min) break;
    if (steps_[i].busy <= max_busy) continue;
    // The last step is always free, because everything taken ends.
    start_min = steps_[i + 1].from_min;
  }
  return start_min;
}

std::size_t CrewLoad::step_at(int at_min) {
  const auto next =
      std::lower_bound(steps_.begin(), steps_.end(), at_min,
                       [](const Step& step, int minute) { return step.from_min < minute; });
  const auto place = static_cast<std::size_t>(next - steps_.begin());
  if (next != steps_.end() && next->from_min == at_min) return place;
  const int busy = place == 0 ? 0 : steps_[place - 1].busy;
  steps_.insert(next, {at_min, busy});
  return place;
}

void CrewLoad::take(int start_min, int end_min, int hands) {
  const std::size_t first = step_at(start_min);
  const std::size_t last = step_at(end_min);
  for (std::size_t i = first; i < last; ++i) steps_[i].busy += hands;
}

void CrewLoad::give_back(int start_min, int end_min, int hands) {
  const std::size_t first = step_at(start_min);
  const std::size_t last = step_at(end_min);
  for (std::size_t i = first; i < last; ++i) steps_[i].busy -= hands;
  drop_if_idle(last);
  drop_if_idle(first);
}

void CrewLoad::drop_if_idle(std::size_t step) {
  const int before = step == 0 ? 0 : steps_[step - 1].busy;
  if (steps_[step].busy != before) return;
  steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(step));
}

}  // namespace slabtide
