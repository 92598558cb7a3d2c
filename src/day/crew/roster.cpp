#include "slabtide/day/crew/roster.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include <fmt/format.h>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr int long_ago_min = std::numeric_limits<int>::min() / 4;
constexpr int no_end_min = std::numeric_limits<int>::max() / 4;

RosterHand usual_hand(int index) {
  RosterHand hand;
  hand.name = fmt::format("finisher {}", index + 1);
  return hand;
}

/// The hours of a job's hand as shifts.
class Shifts {
 public:
  explicit Shifts(const Job& job) : job_(job) {}

  std::vector<Shift> of(const Hand& hand) const {
    if (!hand.from_min && !hand.to_min) return {};
    if (!hand.to_min) return {{at(0, *hand.from_min), no_end_min}};
    std::vector<Shift> shifts;
    const int from_of_day = hand.from_min.value_or(arrival_of_day());
    const bool over_midnight = *hand.to_min <= from_of_day;
    // The shift of the evening before may reach into the pour's day.
    for (int day = -1; day < roster_days; ++day) {
      shifts.push_back({at(day, from_of_day), at(day + (over_midnight ? 1 : 0), *hand.to_min)});
    }
    if (!hand.from_min) come_from_the_start(shifts);
    shifts.push_back({std::max(at(roster_days, 0), shifts.back().to_min), no_end_min});
    return shifts;
  }

 private:
  /// When the crew arrives, by the local clock, in minutes of the day: of the days after the pour
  /// too.
  int arrival_of_day() const {
    const UtcTime arrives =
        after_seconds(job_.pour.start, -job_.crew.arrive_before_min * seconds_per_minute);
    const LocalTime local = job_.site.time_zone.local_from_utc(arrives);
    const auto seconds = static_cast<double>(local.time_of_day().total_seconds());
    return static_cast<int>(seconds / seconds_per_minute);
  }

  /// Minutes from the start of the pour to a time of the local clock.
  int at(int day, int min_of_day) const {
    const LocalTime local(job_.pour.date + boost::gregorian::days(day),
                          boost::posix_time::minutes(min_of_day));
    const UtcTime utc = job_.site.time_zone.utc_from_local(local).utc;
    return static_cast<int>(
        std::lround(seconds_between(job_.pour.start, utc) / seconds_per_minute));
  }

  /// The first shift that ends after the start begins before everything.
  static void come_from_the_start(std::vector<Shift>& shifts) {
    std::erase_if(shifts, [](const Shift& shift) { return shift.to_min <= 0; });
    shifts.front().from_min = long_ago_min;
  }

  const Job& job_;
};

}  // namespace

bool Roster::is_count() const {
  return travel_min == 0 && std::all_of(hands.begin(), hands.end(), [](const RosterHand& hand) {
           return hand.pace == 1.0 && !hand.simple_work && hand.shifts.empty();
         });
}

std::vector<double> Roster::fastest() const {
  std::vector<double> paces;
  for (const RosterHand& hand : hands) paces.push_back(hand.pace);
  std::sort(paces.begin(), paces.end(), std::greater<>());
  for (std::size_t i = 1; i < paces.size(); ++i) paces[i] += paces[i - 1];
  return paces;
}

int Roster::able(const Task& task) const {
  return static_cast<int>(std::count_if(
      hands.begin(), hands.end(), [&task](const RosterHand& hand) { return hand.can_do(task); }));
}

Roster usual_roster(int size) { return enlarged({}, size); }

Roster enlarged(Roster roster, int size) {
  while (roster.size() < size) roster.hands.push_back(usual_hand(roster.size()));
  return roster;
}

Roster roster_of(const Job& job) {
  const Shifts shifts(job);
  Roster roster;
  for (const Hand& hand : job.crew.hands) {
    roster.hands.push_back({hand.name, hand.pace, hand.simple_work, shifts.of(hand)});
  }
  return enlarged(std::move(roster), job.crew.finishers);
}

}  // namespace slabtide
