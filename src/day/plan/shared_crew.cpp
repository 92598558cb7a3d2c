#include "slabtide/day/plan/shared_crew.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

#include "day/crew/crew_clock.h"
#include "day/crew/lent_tasks.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

void check(std::span<const PlannedPour> pours, int travel_min) {
  if (pours.empty()) throw std::invalid_argument("a shared crew: no pour");
  if (travel_min < 0) throw std::invalid_argument("a shared crew: the travel takes negative time");
  for (const PlannedPour& pour : pours) {
    const long days = (pour.job.pour.date - pours.front().job.pour.date).days();
    if (std::abs(days) > max_days_shared) throw std::invalid_argument("a shared crew: days apart");
  }
}

/// Two rosters are one crew if it makes no difference which of them comes.
bool is_same_crew(const Crew& a, const Crew& b) {
  return a.finishers == b.finishers &&
         std::equal(a.hands.begin(), a.hands.end(), b.hands.begin(), b.hands.end(),
                    [](const Hand& x, const Hand& y) {
                      return x.name == y.name && x.pace == y.pace && x.from_min == y.from_min &&
                             x.to_min == y.to_min && x.simple_work == y.simple_work;
                    });
}

std::string site_name(std::span<const PlannedPour> pours, std::size_t site) {
  const auto same = [&](const PlannedPour& pour) { return pour.job.name == pours[site].job.name; };
  if (std::count_if(pours.begin(), pours.end(), same) == 1) return pours[site].job.name;
  return fmt::format("{} ({})", pours[site].job.name, site + 1);
}

/// The work of one of the pours, in minutes from the start of the first, after `before` other
/// tasks.
std::vector<Task> work_of(const PlannedPour& pour, std::size_t site, UtcTime first_start,
                          std::size_t before) {
  DayWork work = day_work(pour.job, pour.plan.zones, pour.plan.cuts, pour.practice);
  const auto later_min = static_cast<int>(
      std::lround(seconds_between(first_start, pour.job.pour.start) / seconds_per_minute));
  for (Task& task : work.tasks) {
    task.site = site;
    task.start_from_min += later_min;
    task.end_from_min += later_min;
    if (task.start_by_min) *task.start_by_min += later_min;
    if (task.end_by_min) *task.end_by_min += later_min;
    for (std::size_t& other : task.after) other += before;
  }
  return std::move(work.tasks);
}

SharedSite site_of(std::span<const PlannedPour> pours, std::size_t site, const CrewPlan& crew) {
  const PlannedPour& pour = pours[site];
  SharedSite shared;
  shared.name = site_name(pours, site);
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    if (crew.tasks[i].site == site) shared.late_min += crew.schedule.assignments[i].late_min;
  }
  shared.alone_min = pour.plan.crew.schedule.late_min;
  shared.finishers = pour.job.crew.finishers;
  shared.other_crew = !is_same_crew(pour.job.crew, pours.front().job.crew);
  return shared;
}

}  // namespace

SharedCrew share_crew(std::span<const PlannedPour> pours, int travel_min) {
  check(pours, travel_min);
  const PlannedPour& first = pours.front();
  SharedCrew shared;
  shared.job = first.job;
  CrewPlan& crew = shared.crew;
  crew.roster = roster_of(first.job);
  crew.roster.travel_min = pours.size() > 1 ? travel_min : 0;
  for (std::size_t site = 0; site < pours.size(); ++site) {
    std::vector<Task> work = work_of(pours[site], site, first.job.pour.start, crew.tasks.size());
    std::move(work.begin(), work.end(), std::back_inserter(crew.tasks));
    const auto& after_plan = pours[site].plan.crew.after_plan;
    crew.after_plan.insert(crew.after_plan.end(), after_plan.begin(), after_plan.end());
  }
  crew.short_handed = lend_to(crew.tasks, crew.roster);
  crew.schedule = schedules_until_in_time(crew.tasks, crew.roster, crew.roster.size()).front();
  put_on_the_clock(crew, first.job, first.practice.crew.hours);
  for (std::size_t site = 0; site < pours.size(); ++site) {
    shared.sites.push_back(site_of(pours, site, crew));
  }
  return shared;
}

}  // namespace slabtide
