#include "slabtide/day/crew/sawing.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "saw_runs.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// The crew's saw tasks in a zone, in the order of its runs.
std::vector<std::size_t> saw_tasks(const CrewPlan& crew, std::size_t zone) {
  std::vector<std::size_t> tasks;
  for (std::size_t i = 0; i < crew.starts.size(); ++i) {
    const Task& task = crew.tasks[i];
    if (task.kind == TaskKind::saw && task.place && task.place->zone == zone) tasks.push_back(i);
  }
  return tasks;
}

/// How long after it was due the cut is through, in whole minutes: a plan is told to the minute.
int minutes_late(const SawnCut& sawn, const PlannedCut& cut) {
  if (!cut.latest) return 0;
  const double late_min = seconds_between(*cut.latest, sawn.ends) / seconds_per_minute;
  return std::max(0, static_cast<int>(std::floor(late_min)));
}

/// The run's cuts as the crew makes them: from the task's start on, and slower where its hand is.
void put_into(SawShift& shift, const SawRun& run, std::size_t task, const CutPlan& cuts,
              const CrewPlan& crew) {
  const double run_s = seconds_between(run.start, run.end);
  const double task_s = seconds_between(crew.starts[task], crew.ends[task]);
  const bool is_slower = task_s > whole_minutes(run_s / seconds_per_minute) * seconds_per_minute;
  const double slower = is_slower && run_s > 0.0 ? task_s / run_s : 1.0;
  const auto moved = [&](UtcTime at) {
    return after_seconds(crew.starts[task], slower * seconds_between(run.start, at));
  };
  for (std::size_t i = run.first_cut; i < run.first_cut + run.cut_count; ++i) {
    SawnCut& sawn = shift.cuts[i];
    sawn.starts = moved(sawn.starts);
    sawn.ends = moved(sawn.ends);
    sawn.task = task;
    sawn.late = sawn.late || minutes_late(sawn, cuts.cuts[sawn.cut]) > 0;
  }
}

SawKind kind_of_saw(const JointChoice& choice, const Job& job) {
  if (const auto chosen = saw_of(choice.way)) return *chosen;
  return job.pour.saws.empty() ? SawKind::early_entry : job.pour.saws.front();
}

/// Of the zones that are jointed in such a way, the one whose first cut is due first.
template <class IsOne>
std::optional<std::size_t> due_first(const CutPlan& cuts, const IsOne& is_one) {
  std::optional<std::size_t> found;
  for (std::size_t zone = 0; zone < cuts.choices.size(); ++zone) {
    const auto due = first_due(cuts, zone);
    if (!due || !is_one(cuts.choices[zone].way)) continue;
    if (!found || *due < *first_due(cuts, *found)) found = zone;
  }
  return found;
}

}  // namespace

SawShift worked_shift(SawKind kind, const CutPlan& cuts, const CrewPlan& crew) {
  SawShift shift = cuts.shift(kind);
  for (std::size_t zone = 0; zone < cuts.choices.size(); ++zone) {
    if (saw_of(cuts.choices[zone].way) != kind) continue;
    const std::vector<SawRun> runs = saw_runs(zone, cuts);
    const std::vector<std::size_t> tasks = saw_tasks(crew, zone);
    for (std::size_t i = 0; i < std::min(runs.size(), tasks.size()); ++i) {
      put_into(shift, runs[i], tasks[i], cuts, crew);
    }
  }
  std::stable_sort(shift.cuts.begin(), shift.cuts.end(),
                   [](const SawnCut& a, const SawnCut& b) { return a.starts < b.starts; });
  return shift;
}

std::optional<UtcTime> first_start(const SawShift& shift, const CutPlan& cuts, std::size_t zone) {
  const auto first =
      std::find_if(shift.cuts.begin(), shift.cuts.end(),
                   [&cuts, zone](const SawnCut& sawn) { return cuts.cuts[sawn.cut].zone == zone; });
  return first == shift.cuts.end() ? std::nullopt : std::optional(first->starts);
}

std::optional<ZoneSawing> sawing_of(const CutPlan& cuts, const CrewPlan& crew, const Job& job,
                                    std::size_t zone) {
  const JointChoice& choice = cuts.choices.at(zone);
  if (choice.way == JointWay::none_needed) return std::nullopt;
  const SawKind kind = kind_of_saw(choice, job);
  const SawShift shift = worked_shift(kind, cuts, crew);
  int late_min = 0;
  for (const SawnCut& sawn : shift.cuts) {
    const PlannedCut& cut = cuts.cuts[sawn.cut];
    if (cut.zone == zone && sawn.late) late_min = std::max(late_min, minutes_late(sawn, cut));
  }
  return ZoneSawing{kind, choice.way != JointWay::tool, first_start(shift, cuts, zone),
                    first_due(cuts, zone), late_min};
}

std::optional<FirstCut> first_cut(const CutPlan& cuts, const CrewPlan& crew) {
  std::optional<FirstCut> first;
  for (const SawKind kind : kinds_of_saw) {
    for (const SawnCut& sawn : worked_shift(kind, cuts, crew).cuts) {
      if (saw_of(cuts.choices[cuts.cuts[sawn.cut].zone].way) != kind) continue;
      if (!first || sawn.starts < first->cut.starts) first = FirstCut{kind, sawn};
    }
  }
  return first;
}

std::optional<std::size_t> first_due_zone(const CutPlan& cuts) {
  return due_first(cuts, [](JointWay way) { return saw_of(way).has_value(); });
}

std::optional<std::size_t> first_without_saw(const CutPlan& cuts) {
  return due_first(cuts, [](JointWay way) { return way == JointWay::tool; });
}

}  // namespace slabtide
