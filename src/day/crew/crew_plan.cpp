#include "slabtide/day/crew/crew_plan.h"

#include <map>

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
