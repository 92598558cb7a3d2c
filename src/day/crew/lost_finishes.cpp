#include "slabtide/day/crew/lost_finishes.h"

#include <algorithm>
#include <map>
#include <set>

namespace slabtide {

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

}  // namespace slabtide
