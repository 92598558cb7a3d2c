#include "hand_load.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace slabtide {

namespace {

constexpr int never_min = std::numeric_limits<int>::max() / 4;

HandSet bit_of(std::size_t hand) { return HandSet{1} << hand; }

}  // namespace

std::vector<int> members_of(HandSet set) {
  std::vector<int> members;
  each_of(set, [&members](std::size_t hand) { members.push_back(static_cast<int>(hand)); });
  return members;
}

int HandLoad::travel_min(const Stay& stay, const Task& task) const {
  return stay.site == task.site ? 0 : roster_.travel_min;
}

HandLoad::FreeTime HandLoad::free_time(std::size_t hand, const Task& task, int at_min) const {
  ++looks_;
  const std::vector<Stay>& stays = stays_[hand];
  const std::vector<Shift>& shifts = roster_.hands[hand].shifts;
  const bool always = shifts.empty() || task.any_hours;
  auto stay = std::partition_point(stays.begin(), stays.end(), [&](const Stay& one) {
    return one.end_min + travel_min(one, task) <= at_min;
  });
  auto shift = shifts.begin();
  for (int before_min = at_min - 1; before_min != at_min;) {
    before_min = at_min;
    for (; stay != stays.end() && stay->start_min - travel_min(*stay, task) <= at_min; ++stay) {
      at_min = std::max(at_min, stay->end_min + travel_min(*stay, task));
    }
    if (always) break;
    while (shift->to_min <= at_min) ++shift;  // the last has no end
    at_min = std::max(at_min, shift->from_min);
  }
  const int called_min =
      stay == stays.end() ? never_min : stay->start_min - travel_min(*stay, task);
  return {at_min, always ? called_min : std::min(called_min, shift->to_min)};
}

HandLoad::FreeHand HandLoad::free_hand(std::size_t hand, const Task& task, int at_min,
                                       int to_min) const {
  FreeHand free;
  free.index = hand;
  free.to_min = to_min;
  free.pace = roster_.hands[hand].pace;
  const std::vector<Stay>& stays = stays_[hand];
  const auto next = std::partition_point(stays.begin(), stays.end(),
                                         [&](const Stay& one) { return one.start_min <= at_min; });
  if (next == stays.begin()) return free;
  const Stay& last = *(next - 1);
  free.travels = last.site != task.site;
  free.since_min = last.end_min;
  return free;
}

/// Also lowers `next_min` to the next time at which somebody becomes free who is not.
void HandLoad::find_free_at(const Task& task, int at_min, int& next_min) const {
  const bool skilled = takes_skill(task.kind);
  free_.clear();
  for (std::size_t i = 0; i < stays_.size(); ++i) {
    const bool simple_work = roster_.hands[i].simple_work;
    if (skilled && simple_work) continue;
    const FreeTime time = free_time(i, task, at_min);
    if (time.from_min > at_min) {
      next_min = std::min(next_min, time.from_min);
      continue;
    }
    free_.push_back(free_hand(i, task, at_min, time.to_min));
    free_.back().spared = !skilled && !simple_work;
  }
  std::sort(free_.begin(), free_.end(), [](const FreeHand& a, const FreeHand& b) {
    return std::tie(a.spared, b.pace, a.travels, b.since_min, a.index) <
           std::tie(b.spared, a.pace, b.travels, a.since_min, b.index);
  });
}

int HandLoad::next_return_min(const Task& task) const {
  int next_min = never_min;
  for (const FreeHand& one : free_) {
    if (one.to_min < never_min)
      next_min = std::min(next_min, free_time(one.index, task, one.to_min).from_min);
  }
  return next_min;
}

std::optional<HandLoad::Place> HandLoad::chosen(const Task& task, int at_min, int hands) const {
  if (free_.size() < static_cast<std::size_t>(hands)) return std::nullopt;
  // Whoever leaves first sets how long a group can work: each such limit is tried, the earliest
  // first, because it leaves the most to choose from.
  limits_min_.clear();
  for (const FreeHand& one : free_) limits_min_.push_back(one.to_min);
  std::sort(limits_min_.begin(), limits_min_.end());
  limits_min_.erase(std::unique(limits_min_.begin(), limits_min_.end()), limits_min_.end());
  for (const int limit_min : limits_min_) {
    Place place{0, at_min, at_min};
    double pace = 0.0;
    int taken = 0;
    for (const FreeHand& one : free_) {
      if (taken == hands || one.to_min < limit_min) continue;
      place.who |= bit_of(one.index);
      pace += roster_.hands[one.index].pace;
      ++taken;
    }
    if (taken < hands) return std::nullopt;
    place.end_min = at_min + task.duration_min(pace);
    if (place.end_min <= limit_min) return place;
  }
  return std::nullopt;
}

HandLoad::Place HandLoad::first_place(const Task& task, int ready_min, int hands) const {
  int at_min = std::max(ready_min, task.start_from_min);
  for (;;) {
    int next_min = never_min;
    find_free_at(task, at_min, next_min);
    if (const auto place = chosen(task, at_min, hands)) {
      // Nobody stands by for the last tenth.
      const int from_min = task.end_from_min - (place->end_min - place->start_min);
      if (from_min <= at_min) return *place;
      next_min = std::min(next_min, from_min);
    }
    at_min = std::min(next_min, next_return_min(task));
  }
}

HandLoad::Place HandLoad::first_place_of(const Task& task, int ready_min, HandSet who) const {
  double pace = 0.0;
  each_of(who, [&](std::size_t one) { pace += roster_.hands[one].pace; });
  const int duration_min = task.duration_min(pace);
  int at_min = std::max(ready_min, task.from_min(pace));
  for (bool moved = true; moved;) {
    moved = false;
    each_of(who, [&](std::size_t one) {
      const FreeTime time = free_time(one, task, at_min);
      const bool fits = time.from_min == at_min && time.to_min >= at_min + duration_min;
      if (fits) return;
      at_min = time.from_min > at_min ? time.from_min : time.to_min;
      moved = true;
    });
  }
  return {who, at_min, at_min + duration_min};
}

void HandLoad::take(const Place& place, std::size_t site) {
  each_of(place.who, [&](std::size_t one) {
    std::vector<Stay>& stays = stays_[one];
    const auto at = std::partition_point(stays.begin(), stays.end(), [&](const Stay& stay) {
      return stay.start_min < place.start_min;
    });
    stays.insert(at, {place.start_min, place.end_min, site});
  });
}

void HandLoad::give_back(const Place& place) {
  each_of(place.who, [&](std::size_t one) {
    std::vector<Stay>& stays = stays_[one];
    stays.erase(std::partition_point(stays.begin(), stays.end(), [&](const Stay& stay) {
      return stay.start_min < place.start_min;
    }));
  });
}

}  // namespace slabtide
