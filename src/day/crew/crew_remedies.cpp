#include "slabtide/day/crew/crew_remedies.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <map>
#include <span>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "core/parallel.h"
#include "job/model/wording.h"
#include "schedule_search.h"
#include "slabtide/day/crew/lost_finishes.h"

namespace slabtide {

namespace {

constexpr std::size_t max_more_hands = 2;
/// So many lost zones are tried to be saved one by one; of more tasks the search is long, and one.
constexpr std::size_t max_rescued = 3;
constexpr std::size_t max_tasks_of_more = 60;
/// The effect of one and two ordinary doses at mild temperatures, and an hour between; ours.
constexpr std::array<int, 3> later_min{30, 60, 90};

/// The zones with minutes late that the crew could have prevented, of their own finishing: the
/// latest first.
std::vector<std::size_t> late_zones(const std::vector<Task>& tasks, const Schedule& schedule) {
  std::map<std::size_t, int> late_min;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    if (tasks[i].later || !tasks[i].place) continue;
    late_min[tasks[i].place->zone] += schedule.assignments[i].late_min;
  }
  std::vector<std::size_t> zones;
  for (const auto& [zone, minutes] : late_min) {
    if (minutes > 0) zones.push_back(zone);
  }
  std::stable_sort(zones.begin(), zones.end(), [&late_min](std::size_t a, std::size_t b) {
    return late_min.at(a) > late_min.at(b);
  });
  return zones;
}

std::string name_of(std::size_t zone, const std::vector<Task>& tasks) {
  return std::find_if(tasks.begin(), tasks.end(),
                      [zone](const Task& task) { return task.place && task.place->zone == zone; })
      ->zone;
}

void put_back(Task& task, int minutes) {
  task.start_from_min += minutes;
  task.end_from_min += minutes;
  if (task.start_by_min) *task.start_by_min += minutes;
  if (task.end_by_min) *task.end_by_min += minutes;
}

std::vector<Task> with_zone_later(std::vector<Task> tasks, std::size_t zone, int minutes,
                                  bool placing_too) {
  for (Task& task : tasks) {
    const bool here = task.place && task.place->zone == zone;
    const bool moves = here && (placing_too || task.kind != TaskKind::screed);
    if (moves) put_back(task, minutes);
  }
  return tasks;
}

/// The tasks of these zones and of the whole job.
std::vector<Task> only_in(std::span<const std::size_t> zones, const std::vector<Task>& tasks) {
  std::vector<Task> kept;
  std::vector<std::optional<std::size_t>> place_of(tasks.size());
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const auto& place = tasks[i].place;
    if (place && std::find(zones.begin(), zones.end(), place->zone) == zones.end()) continue;
    place_of[i] = kept.size();
    Task task = tasks[i];
    task.after.clear();
    for (const std::size_t before : tasks[i].after) {
      if (place_of[before]) task.after.push_back(*place_of[before]);
    }
    kept.push_back(std::move(task));
  }
  return kept;
}

/// The most zones, of those placed first, that the crew finishes without losing one; empty if it is
/// none, or all.
std::optional<CrewRemedy> fewer_zones(const std::vector<Task>& tasks, const Roster& roster) {
  const std::vector<std::size_t> zones = zones_as_placed(tasks);
  std::size_t done = 0;
  int late_min = 0;
  for (std::size_t over = zones.size(); over - done > 1;) {
    const std::size_t tried = (done + over) / 2;
    const std::vector<Task> fewer = only_in(std::span(zones).first(tried), tasks);
    const Schedule schedule = search_schedule(fewer, roster, nullptr).schedule;
    const bool good = lost_finishes(fewer, schedule).empty();
    (good ? done : over) = tried;
    if (good) late_min = schedule.late_min;
  }
  if (done == 0) return std::nullopt;
  CrewRemedy remedy;
  remedy.kind = RemedyKind::pour_less;
  remedy.amount = static_cast<int>(zones.size() - done);
  remedy.late_min = late_min;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    (i < done ? remedy.kept : remedy.left).push_back(name_of(zones[i], tasks));
  }
  return remedy;
}

/// A remedy that was tried, and the zones whose finish is lost with it.
struct Tried {
  CrewRemedy remedy;
  std::vector<std::size_t> lost;

  bool saves(std::size_t zone) const {
    return std::find(lost.begin(), lost.end(), zone) == lost.end();
  }
};

Tried tried(CrewRemedy remedy, const std::vector<Task>& tasks, const Schedule& schedule) {
  Tried one{std::move(remedy), lost_finishes(tasks, schedule)};
  one.remedy.late_min = schedule.late_min;
  for (const std::size_t zone : one.lost) one.remedy.lost.push_back(name_of(zone, tasks));
  return one;
}

/// The zone held back by each of the times: its set first, then its placing too.
std::vector<Tried> held_back(const std::vector<Task>& tasks, std::size_t zone, const Roster& roster,
                             int threads) {
  std::vector<Tried> held(2 * later_min.size());
  in_parallel(held.size(), threads, [&](std::size_t i) {
    const bool places_too = i >= later_min.size();
    const int minutes = later_min[i % later_min.size()];
    const std::vector<Task> later = with_zone_later(tasks, zone, minutes, places_too);
    held[i] = tried({.kind = places_too ? RemedyKind::place_later : RemedyKind::slow_the_set,
                     .zone = name_of(zone, tasks),
                     .amount = minutes},
                    later, search_schedule(later, roster, nullptr).schedule);
  });
  return held;
}

/// The zone with no other poured that day; nothing where there is no other.
std::vector<Tried> alone(const std::vector<Task>& tasks, std::size_t zone, const Roster& roster) {
  CrewRemedy remedy;
  remedy.kind = RemedyKind::pour_less;
  remedy.zone = name_of(zone, tasks);
  remedy.kept = {remedy.zone};
  for (const std::size_t other : zones_as_placed(tasks)) {
    if (other != zone) remedy.left.push_back(name_of(other, tasks));
  }
  if (remedy.left.empty()) return {};
  remedy.amount = static_cast<int>(remedy.left.size());
  const std::vector<Task> own = only_in(std::span(&zone, 1), tasks);
  return {tried(std::move(remedy), own, search_schedule(own, roster, nullptr).schedule)};
}

/// Of what was tried, the least of each kind that saves the zone; the kinds stand together.
ZoneRescue rescue_of(std::size_t zone, const std::vector<Task>& tasks,
                     std::initializer_list<std::span<const Tried>> kinds) {
  ZoneRescue rescue{.zone = name_of(zone, tasks)};
  for (const auto& all : kinds) {
    for (const Tried& one : all) {
      const bool has_less = !rescue.ways.empty() && rescue.ways.back().kind == one.remedy.kind;
      if (one.saves(zone) && !has_less) rescue.ways.push_back(one.remedy);
    }
  }
  return rescue;
}

/// The schedules of larger crews as remedies.
std::vector<Tried> more_hands(const std::vector<Task>& tasks, const Schedule& as_planned,
                              std::span<const Schedule> larger) {
  std::vector<Tried> all;
  for (const Schedule& schedule : larger) {
    CrewRemedy remedy;
    remedy.kind = RemedyKind::more_hands;
    remedy.amount = schedule.crew - as_planned.crew;
    all.push_back(tried(std::move(remedy), tasks, schedule));
  }
  return all;
}

/// The latest zones whose finish is lost, for which it is worth trying what saves them.
std::vector<std::size_t> rescued_zones(std::span<const std::size_t> late,
                                       std::span<const std::size_t> lost, std::size_t tasks) {
  std::vector<std::size_t> zones;
  for (const std::size_t zone : late) {
    if (std::find(lost.begin(), lost.end(), zone) != lost.end()) zones.push_back(zone);
  }
  zones.resize(std::min(zones.size(), tasks > max_tasks_of_more ? 1 : max_rescued));
  return zones;
}

std::string way_words(const CrewRemedy& way) {
  switch (way.kind) {
    case RemedyKind::more_hands:
      return way.amount == 1 ? "one more finisher" : fmt::format("{} more finishers", way.amount);
    case RemedyKind::slow_the_set:
      return fmt::format("a retarder that holds it back {} min", way.amount);
    case RemedyKind::place_later:
      return fmt::format("placing it {} min later, from a load of its own", way.amount);
    case RemedyKind::pour_less:
      return "nothing else poured that day";
  }
  return {};
}

}  // namespace

std::string late_words(int minutes) {
  if (minutes == 0) return "nothing late";
  return minutes >= hopeless_late_min ? "over 10 h late" : duration_words(minutes) + " late";
}

std::string remedy_words(const CrewRemedy& remedy) {
  std::string left = late_words(remedy.late_min);
  switch (remedy.kind) {
    case RemedyKind::more_hands:
      return remedy.amount == 1 ? fmt::format("with one more finisher: {}", left)
                                : fmt::format("with {} more finishers: {}", remedy.amount, left);
    case RemedyKind::slow_the_set:
      return fmt::format("a retarder that holds {} back {} min: {}", remedy.zone, remedy.amount,
                         left);
    case RemedyKind::place_later:
      return fmt::format("{} placed {} min later, from a load of its own: {}", remedy.zone,
                         remedy.amount, left);
    case RemedyKind::pour_less:
      return remedy.left.size() <= remedy.kept.size()
                 ? fmt::format("with {} left for another day: {}", names_words(remedy.left), left)
                 : fmt::format("with only {} poured that day: {}", names_words(remedy.kept), left);
  }
  return left;
}

std::string rescue_words(const ZoneRescue& rescue) {
  if (rescue.ways.empty()) {
    return fmt::format(
        "nothing tried saves {}, not {} hands, a retarder, placing it up to {} min later, or "
        "pouring it alone: leave it for another day, or pour it in parts",
        rescue.zone, rescue.most_hands, later_min.back());
  }
  std::string words;
  for (const CrewRemedy& way : rescue.ways) {
    const std::string after = way.lost.empty()
                                  ? late_words(way.late_min)
                                  : fmt::format("still lost: {}", names_words(way.lost));
    words += fmt::format("{}{} ({})", words.empty() ? "" : ", or ", way_words(way), after);
  }
  return fmt::format("to save {}: {}", rescue.zone, words);
}

CrewHelp crew_remedies(const std::vector<Task>& tasks, const Roster& roster,
                       const Schedule& as_planned, std::span<const Schedule> larger, int threads) {
  CrewHelp help;
  std::vector<CrewRemedy>& remedies = help.remedies;
  const auto consider = [&](const CrewRemedy& remedy) {
    // More of the same that is no better is not worth mentioning.
    const bool same = !remedies.empty() && remedies.back().kind == remedy.kind;
    const int to_better = same ? remedies.back().late_min : as_planned.late_min;
    if (remedy.late_min < std::min(to_better, hopeless_late_min)) remedies.push_back(remedy);
  };
  const std::vector<Tried> hands = more_hands(tasks, as_planned, larger);
  for (const Tried& one : std::span(hands).first(std::min(max_more_hands, hands.size()))) {
    consider(one.remedy);
  }
  const std::vector<std::size_t> lost = lost_finishes(tasks, as_planned);
  if (!lost.empty() && hands.size() > max_more_hands && hands.back().lost.empty()) {
    // The fewest who are late by no more than the most that were tried.
    const auto enough = std::find_if(hands.begin(), hands.end(), [&hands](const Tried& one) {
      return one.remedy.late_min == hands.back().remedy.late_min;
    });
    consider(enough->remedy);
  }
  if (!lost.empty()) {
    if (auto fewer = fewer_zones(tasks, roster)) remedies.push_back(std::move(*fewer));
  }
  const std::vector<std::size_t> late = late_zones(tasks, as_planned);
  const std::vector<std::size_t> rescued = rescued_zones(late, lost, tasks.size());
  std::map<std::size_t, std::vector<Tried>> held;  // of each zone
  if (!late.empty()) {
    held[late.front()] = held_back(tasks, late.front(), roster, threads);
    for (const Tried& one : held[late.front()]) consider(one.remedy);
  }
  for (const std::size_t zone : rescued) {
    if (!held.contains(zone)) held[zone] = held_back(tasks, zone, roster, threads);
    help.rescues.push_back(rescue_of(zone, tasks, {hands, held[zone], alone(tasks, zone, roster)}));
    help.rescues.back().most_hands = larger.empty() ? as_planned.crew : larger.back().crew;
  }
  std::stable_sort(remedies.begin(), remedies.end(), [](const CrewRemedy& a, const CrewRemedy& b) {
    return a.late_min < b.late_min;
  });
  return help;
}

}  // namespace slabtide
