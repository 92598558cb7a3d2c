#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/crew/crew_remedies.h"
#include "slabtide/day/crew/lost_finishes.h"
#include "slabtide/day/crew/roster.h"
#include "slabtide/day/crew/schedule.h"
#include "slabtide/day/crew/tasks.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"

namespace slabtide {

/// A wait on site.
struct IdleTime {
  UtcTime from;
  UtcTime to;
};

/// One stay on a site of one person.
struct CrewVisit {
  UtcTime arrives;
  UtcTime leaves;
  std::vector<std::size_t> tasks;  ///< indices into CrewPlan::tasks, in order of start
  std::vector<IdleTime> idle;      ///< waits long enough to mention
  std::size_t site = 0;            ///< of several that share the crew
};

/// One person of the crew and their day.
struct CrewMember {
  std::string name;               ///< "finisher 1"
  std::vector<CrewVisit> visits;  ///< empty if there is nothing for them to do
};

/// The task with the least time to spare.
struct TightTask {
  std::size_t task = 0;
  int slack_min = 0;  ///< negative: late
};

/// The finishing crew's day.
struct CrewPlan {
  Roster roster;
  std::vector<Task> tasks;
  std::vector<Task> after_plan;  ///< finishing that opens after the plan's end: not done in it
  std::vector<UtcTime> starts;   ///< in the order of the tasks
  std::vector<UtcTime> ends;
  Schedule schedule;  ///< of the crew that the job gives
  std::vector<CrewMember> people;
  /// A task needs more workers than the job's crew has; it was then given to the whole crew.
  bool short_handed = false;
  /// The smallest crew that is never late, up to `max_crew_tried`. Of a roster that is no count,
  /// only the whole of it and larger ones, with usual hands added, are tried; likewise below.
  std::optional<int> smallest_crew;
  /// The smallest crew that does as well as `max_crew_tried`.
  int enough_crew = 0;
  int min_late_min = 0;  ///< of that crew
  std::optional<TightTask> tightest;
  std::vector<std::size_t> late;         ///< tasks, the latest first
  std::vector<CrewRemedy> remedies;      ///< for what is late, the most effective first
  std::vector<ZoneRescue> rescues = {};  ///< of finishes that are lost, the latest zone first
  /// For each task the fraction of the sampled days on which it is late (`late_days`). Absent for
  /// tasks that do not follow the setting; empty if the plan has no samples.
  std::vector<std::optional<double>> late_chances;
  /// Likewise the share of the days on which the finish is lost by it (`finish_lost_min`).
  std::vector<std::optional<double>> lost_chances;
  /// The share of those days on which any of it is lost; absent if the plan has no samples.
  std::optional<double> finish_lost_fraction = std::nullopt;
  /// Likewise of each zone, parallel to Job::zones; empty if the plan has no samples.
  std::vector<double> zone_lost_fractions = {};

  double crew_hours() const;  ///< on site, over all visits
};

/// The largest crew that is tried (ours).
inline constexpr int max_crew_tried = 12;

/// The names of the zones whose finish the planned crew loses on the likely day (`lost_finishes`).
std::vector<std::string> lost_finish_names(const CrewPlan& crew);

/// How late the crew runs, in words: "nothing late", "20 min late", and where finishes are lost
/// which: "2 finishes lost (pad and walk), 1 h 5 min late". Minutes over ten hours say nothing and
/// are left out.
std::string crew_late_words(const CrewPlan& crew);

/// How far a crew plan looks beyond the job's own crew.
enum class CrewDepth {
  own_crew,  ///< no other: `smallest_crew`, `enough_crew`, `min_late_min` and `remedies` stay empty
  other_crews,  ///< other sizes, but no remedies
  remedies,     ///< all of it
};

}  // namespace slabtide
