#include "slabtide/day/crew/crew_plan.h"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "slabtide/core/units.h"

namespace slabtide {

double CrewPlan::crew_hours() const {
  double seconds = 0.0;
  for (const CrewMember& member : people) {
    for (const CrewVisit& visit : member.visits) {
      seconds += seconds_between(visit.arrives, visit.leaves);
    }
  }
  return seconds / seconds_per_hour;
}

std::vector<std::size_t> zones_as_placed(std::span<const Task> tasks) {
  std::map<std::size_t, int> placed_min;
  for (const Task& task : tasks) {
    if (!task.place) continue;
    const auto [zone, is_new] = placed_min.emplace(task.place->zone, task.start_from_min);
    if (!is_new) zone->second = std::min(zone->second, task.start_from_min);
  }
  std::vector<std::size_t> zones;
  for (const auto& [zone, from_min] : placed_min) zones.push_back(zone);
  std::stable_sort(zones.begin(), zones.end(), [&](std::size_t a, std::size_t b) {
    return placed_min.at(a) < placed_min.at(b);
  });
  return zones;
}

std::vector<std::size_t> lost_finishes(std::span<const Task> tasks, const Schedule& schedule) {
  std::set<std::size_t> lost;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    if (!tasks[i].place || !makes_the_finish(tasks[i].kind)) continue;
    if (schedule.assignments[i].late_min > finish_lost_min) lost.insert(tasks[i].place->zone);
  }
  std::vector<std::size_t> zones = zones_as_placed(tasks);
  std::erase_if(zones, [&lost](std::size_t zone) { return !lost.contains(zone); });
  return zones;
}

std::vector<std::string> lost_finish_names(const CrewPlan& crew) {
  std::map<std::size_t, std::string> names;
  for (const Task& task : crew.tasks) {
    if (task.place) names.emplace(task.place->zone, task.zone);
  }
  std::vector<std::string> lost;
  for (const std::size_t zone : lost_finishes(crew.tasks, crew.schedule)) {
    lost.push_back(names.at(zone));
  }
  return lost;
}

std::string crew_late_words(const CrewPlan& crew) {
  const int late_min = crew.schedule.late_min;
  const std::vector<std::string> lost = lost_finish_names(crew);
  if (lost.empty()) return late_words(late_min);
  const std::string words =
      lost.size() == 1 ? fmt::format("the finish of {} lost", lost.front())
                       : fmt::format("{} finishes lost ({})", lost.size(), names_words(lost));
  return late_min < hopeless_late_min ? fmt::format("{}, {}", words, late_words(late_min)) : words;
}

}  // namespace slabtide
