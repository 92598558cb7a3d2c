#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/crew/supplies.h"
#include "slabtide/day/joints/cut_plan.h"
#include "slabtide/day/plan/caution.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/sureness.h"
#include "slabtide/day/windows/zone_plan.h"
#include "slabtide/weather/sky/sun.h"

namespace slabtide {

/// The tightest window of the day.
struct Tightest {
  PlaceId place;
  std::string zone;  ///< as it is shown
  std::string part;  ///< as it is shown; empty for a whole zone
  Operation operation = Operation::stamp;
  UtcTime opens;
  double minutes = 0.0;
};

/// Everything that a report shows about the day.
struct DayPlan {
  SunTimes sun;
  std::vector<ZonePlan> zones;  ///< in the order of job.zones
  CutPlan cuts;
  std::optional<Tightest> tightest;
  CrewPlan crew;
  std::vector<Supply> supplies;
  std::vector<Caution> cautions;
  std::vector<std::string> assumptions;
  /// What the observations so far show, and which of them do not count; empty if there are none.
  std::vector<std::string> seen;
  std::optional<Sureness> sureness;  ///< if the plan has bands
  std::optional<FrostDays> frost;    ///< likewise
};

/// What a plan may leave out or reuse, when many plans are made of one job.
struct PlanScope {
  CrewDepth crew = CrewDepth::remedies;
  /// Of a job with the same zones, obstacles, aggregate and rules; null to keep nothing.
  CutMemo* cuts = nullptr;
  int threads = 1;  ///< as in SolverSettings; the plan is the same for any number
};

/// `forecast_age_h`: hours since the forecast was issued, if known.
DayPlan plan_day(const Job& job, const PourRun& run, const Practice& practice,
                 std::optional<double> forecast_age_h = std::nullopt, const PlanScope& scope = {});

}  // namespace slabtide
