#pragma once

#include <span>
#include <string>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// One of the sites that share a crew.
struct SharedSite {
  std::string name;         ///< the job's; with a number where two jobs have the same
  int late_min = 0;         ///< total over its tasks
  int alone_min = 0;        ///< the same if its own job's crew is there all day
  int finishers = 0;        ///< of its own job
  bool other_crew = false;  ///< its job gives another crew than the first one's
};

/// One crew's day on several sites. The tasks and stays of `crew` say by `site` where they are; no
/// smaller or larger crew is tried.
struct SharedCrew {
  Job job;  ///< of the first site, whose clock and date everything is told by
  std::vector<SharedSite> sites;
  CrewPlan crew;
};

/// Minutes from one site to another, unless they are given (ours).
inline constexpr int usual_travel_min = 20;

/// The dates of pours that share a crew may be this many days apart (ours).
inline constexpr int max_days_shared = 1;

/// Plans the work of all the pours for the crew of the first: everybody is on one site at a time,
/// and takes `travel_min` from one to another.
/// Error: std::invalid_argument if there is no pour, dates are further apart than
/// `max_days_shared`, or `travel_min` is negative.
SharedCrew share_crew(std::span<const PlannedPour> pours, int travel_min);

/// What the shared crew does on one of its sites, as the crew plan of that job: its tasks, in
/// minutes from its own pour's start, and who is there when. `pour` as share_crew had it; no
/// smaller or larger crew, and no chances, which only the job's own crew has. Error:
/// std::out_of_range for a site that there is not.
CrewPlan crew_on_site(const SharedCrew& shared, const PlannedPour& pour, std::size_t site);

}  // namespace slabtide
