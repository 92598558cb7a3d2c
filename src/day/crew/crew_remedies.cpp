#include "slabtide/day/crew/crew_remedies.h"

#include <algorithm>
#include <array>
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
/// The effect of one and two ordinary doses at mild temperatures, and an hour between; ours.
constexpr std::array<int, 3> later_min{30, 60, 90};

/// The zone with the most late minutes that the crew could have prevented: its own finishing.
std::optional<std::size_t> latest_zone(const std::vector<Task>& tasks, const Schedule& schedule) {
  std::map<std::size_t, int> late_min;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    if (tasks[i].later || !tasks[i].place) continue;
    late_min[tasks[i].place->zone] += schedule.assignments[i].late_min;
  }
  const auto latest = std::max_element(late_min.begin(), late_min.end(),
                                       [](auto& a, auto& b) { return a.second < b.second; });
  return latest == late_min.end() || latest->second == 0 ? std::nullopt
                                                         : std::optional(latest->first);
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

/// The zone held back by each of the times: its set first, then its placing too.
std::vector<CrewRemedy> held_back(const std::vector<Task>& tasks, std::size_t zone,
                                  const Roster& roster, int threads) {
  std::vector<CrewRemedy> held(2 * later_min.size());
  in_parallel(held.size(), threads, [&](std::size_t i) {
    const bool places_too = i >= later_min.size();
    CrewRemedy& remedy = held[i];
    remedy.kind = places_too ? RemedyKind::place_later : RemedyKind::slow_the_set;
    remedy.zone = name_of(zone, tasks);
    remedy.amount = later_min[i % later_min.size()];
    const std::vector<Task> later = with_zone_later(tasks, zone, remedy.amount, places_too);
    remedy.late_min = search_schedule(later, roster, nullptr).schedule.late_min;
  });
  return held;
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

std::vector<CrewRemedy> crew_remedies(const std::vector<Task>& tasks, const Roster& roster,
                                      const Schedule& as_planned, std::span<const Schedule> larger,
                                      int threads) {
  std::vector<CrewRemedy> remedies;
  const auto consider = [&](RemedyKind kind, const std::string& zone, int amount, int late_min) {
    // More of the same that is no better is not worth mentioning.
    const bool same = !remedies.empty() && remedies.back().kind == kind;
    const int to_better = same ? remedies.back().late_min : as_planned.late_min;
    if (late_min < std::min(to_better, hopeless_late_min))
      remedies.push_back({.kind = kind, .zone = zone, .amount = amount, .late_min = late_min});
  };
  for (const Schedule& schedule : larger.first(std::min(max_more_hands, larger.size()))) {
    consider(RemedyKind::more_hands, {}, schedule.crew - as_planned.crew, schedule.late_min);
  }
  const bool loses = !lost_finishes(tasks, as_planned).empty();
  if (loses && larger.size() > max_more_hands && lost_finishes(tasks, larger.back()).empty()) {
    consider(RemedyKind::more_hands, {}, larger.back().crew - as_planned.crew,
             larger.back().late_min);
  }
  if (loses) {
    if (auto fewer = fewer_zones(tasks, roster)) remedies.push_back(std::move(*fewer));
  }
  if (const auto zone = latest_zone(tasks, as_planned)) {
    for (const CrewRemedy& held : held_back(tasks, *zone, roster, threads)) {
      consider(held.kind, held.zone, held.amount, held.late_min);
    }
  }
  std::stable_sort(remedies.begin(), remedies.end(), [](const CrewRemedy& a, const CrewRemedy& b) {
    return a.late_min < b.late_min;
  });
  return remedies;
}

}  // namespace slabtide
