#include "slabtide/day/crew/task.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

namespace slabtide {

int whole_minutes(double minutes) {
  constexpr double rounding = 1e-9;
  return static_cast<int>(std::ceil(minutes - rounding));
}

int Task::duration_min(double hands) const {
  if (!(hands > 0.0)) throw std::invalid_argument("a task without hands");
  const double min = std::max(work_person_min / hands, min_duration_min);
  const int working = whole_minutes(min);
  const int waiting = start_by_min ? end_from_min - std::max(*start_by_min, start_from_min) : 0;
  return std::max({1, working, waiting});
}

int Task::from_min(double hands) const {
  return std::max(start_from_min, end_from_min - duration_min(hands));
}

int Task::late_min(int start_min, int end_min) const {
  const int late_start = start_by_min ? start_min - *start_by_min : 0;
  const int late_end = end_by_min ? end_min - *end_by_min : 0;
  return std::max({0, late_start, late_end});
}

std::optional<int> Task::slack_min(int start_min, int end_min) const {
  std::optional<int> slack;
  if (end_by_min) slack = *end_by_min - end_min;
  if (start_by_min)
    slack = std::min(slack.value_or(*start_by_min - start_min), *start_by_min - start_min);
  return slack;
}

std::string task_words(const Task& task) {
  std::string words(task_kind_words(task.kind));
  if (!task.zone.empty()) words += ", " + task.zone;
  if (!task.part.empty()) words += ", " + task.part;
  if (task.pieces > 1) words += fmt::format(", {} of {}", task.piece, task.pieces);
  return words;
}

}  // namespace slabtide
