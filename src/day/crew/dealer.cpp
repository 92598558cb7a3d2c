#include "dealer.h"

#include <algorithm>
#include <limits>

namespace slabtide {

int Dealer::idle_min(const Schedule& schedule) {
  given_.clear();
  return is_named(schedule) ? idle_of_named_min(schedule) : deal(schedule);
}

void Dealer::name(Schedule& schedule) const {
  for (const auto& [task, who] : given_) schedule.assignments[task].who.push_back(who);
  for (Assignment& assignment : schedule.assignments) {
    std::sort(assignment.who.begin(), assignment.who.end());
  }
}

bool Dealer::is_named(const Schedule& schedule) const {
  return !tasks_.empty() && !schedule.assignments.front().who.empty();
}

int Dealer::deal(const Schedule& schedule) {
  crew_.assign(static_cast<std::size_t>(schedule.crew), {std::numeric_limits<int>::min(), false});
  by_start_.clear();
  for (std::size_t i = 0; i < tasks_.size(); ++i) {
    by_start_.emplace_back(schedule.assignments[i].start_min, i);
  }
  std::sort(by_start_.begin(), by_start_.end());
  int idle_min = 0;
  for (const auto& [start_min, task] : by_start_) {
    const Assignment& assignment = schedule.assignments[task];
    for (int i = 0; i < assignment.hands; ++i) {
      const std::size_t who = next_free(start_min);
      Hand& hand = crew_[who];
      if (!tasks_[task].later) {
        if (hand.has_begun) idle_min += start_min - hand.free_from_min;
        hand.has_begun = true;
      }
      hand.free_from_min = assignment.end_min;
      given_.emplace_back(task, static_cast<int>(who));
    }
  }
  return idle_min;
}

/// The one who became free last among those who are free. There is always one, because the load
/// was respected.
std::size_t Dealer::next_free(int at_min) const {
  std::size_t best = crew_.size();
  for (std::size_t i = 0; i < crew_.size(); ++i) {
    if (crew_[i].free_from_min > at_min) continue;
    if (best == crew_.size() || crew_[i].free_from_min > crew_[best].free_from_min) best = i;
  }
  return best;
}

int Dealer::idle_of_named_min(const Schedule& schedule) const {
  std::vector<std::vector<const Assignment*>> days(static_cast<std::size_t>(schedule.crew));
  for (std::size_t i = 0; i < tasks_.size(); ++i) {
    if (tasks_[i].later) continue;
    for (const int one : schedule.assignments[i].who) {
      days[static_cast<std::size_t>(one)].push_back(&schedule.assignments[i]);
    }
  }
  int idle_min = 0;
  for (auto& day : days) {
    std::sort(day.begin(), day.end(),
              [](const Assignment* a, const Assignment* b) { return a->start_min < b->start_min; });
    for (std::size_t i = 1; i < day.size(); ++i)
      idle_min += day[i]->start_min - day[i - 1]->end_min;
  }
  return idle_min;
}

}  // namespace slabtide
