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

/// How long after the first pour's start another's is.
int later_min(UtcTime first_start, const PlannedPour& pour) {
  return static_cast<int>(
      std::lround(seconds_between(first_start, pour.job.pour.start) / seconds_per_minute));
}

/// Counts the task's minutes from a start so much earlier.
void count_from_earlier(Task& task, int by_min) {
  task.start_from_min += by_min;
  task.end_from_min += by_min;
  if (task.start_by_min) *task.start_by_min += by_min;
  if (task.end_by_min) *task.end_by_min += by_min;
}

/// The work of one of the pours, in minutes from the start of the first, after `before` other
/// tasks.
std::vector<Task> work_of(const PlannedPour& pour, std::size_t site, UtcTime first_start,
                          std::size_t before) {
  DayWork work = day_work(pour.job, pour.plan.zones, pour.plan.cuts, pour.practice);
  const int by_min = later_min(first_start, pour);
  for (Task& task : work.tasks) {
    task.site = site;
    count_from_earlier(task, by_min);
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

/// Where a site's tasks stand in the shared list: together.
struct SiteTasks {
  std::size_t first = 0;
  std::size_t count = 0;
};

SiteTasks tasks_on(std::size_t site, const CrewPlan& crew) {
  const auto there = [site](const Task& task) { return task.site == site; };
  const auto first = std::find_if(crew.tasks.begin(), crew.tasks.end(), there);
  const auto last = std::find_if_not(first, crew.tasks.end(), there);
  return {static_cast<std::size_t>(first - crew.tasks.begin()),
          static_cast<std::size_t>(last - first)};
}

std::vector<CrewMember> people_on(std::size_t site, std::size_t first_task, const CrewPlan& crew) {
  std::vector<CrewMember> people = crew.people;
  for (CrewMember& member : people) {
    std::erase_if(member.visits, [site](const CrewVisit& visit) { return visit.site != site; });
    for (CrewVisit& visit : member.visits) {
      visit.site = 0;
      for (std::size_t& task : visit.tasks) task -= first_task;
    }
  }
  return people;
}

}  // namespace

CrewPlan crew_on_site(const SharedCrew& shared, const PlannedPour& pour, std::size_t site) {
  if (site >= shared.sites.size()) throw std::out_of_range("a shared crew: no such site");
  const CrewPlan& all = shared.crew;
  const auto [first, count] = tasks_on(site, all);
  const int by_min = later_min(shared.job.pour.start, pour);
  CrewPlan crew;
  crew.roster = roster_of(shared.job);
  crew.after_plan = pour.plan.crew.after_plan;
  crew.short_handed = all.short_handed;
  crew.schedule.crew = all.schedule.crew;
  for (std::size_t i = first; i < first + count; ++i) {
    Task& task = crew.tasks.emplace_back(all.tasks[i]);
    task.site = 0;
    count_from_earlier(task, -by_min);
    for (std::size_t& other : task.after) other -= first;
    Assignment& at = crew.schedule.assignments.emplace_back(all.schedule.assignments[i]);
    at.start_min -= by_min;
    at.end_min -= by_min;
    crew.schedule.late_min += at.late_min;
    crew.starts.push_back(all.starts[i]);
    crew.ends.push_back(all.ends[i]);
  }
  crew.people = people_on(site, first, all);
  find_late(crew);
  return crew;
}

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
