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
  std::string zone;
  std::string part;
  Operation operation = Operation::stamp;
  UtcTime opens;
  double minutes = 0.0;
};

/// All that a report tells of the day.
struct DayPlan {
  SunTimes sun;
  std::vector<ZonePlan> zones;  ///< in the order of job.zones
  CutPlan cuts;
  std::optional<Tightest> tightest;
  CrewPlan crew;
  std::vector<Supply> supplies;
  std::vector<Caution> cautions;
  std::vector<std::string> assumptions;
  /// What the readings so far say, and which of them do not count; empty without any.
  std::vector<std::string> seen;
  std::optional<Sureness> sureness;  ///< where the plan has its bands
};

/// What a plan may leave out or take over, where many are made of one job.
struct PlanScope {
  CrewDepth crew = CrewDepth::remedies;
  /// The joints of a job with the same zones, obstacles, aggregate and rules, one entry a zone.
  const std::vector<ZoneJoints>* joints = nullptr;
};

/// `forecast_age_h`: hours since the forecast was issued, where that is known.
DayPlan plan_day(const Job& job, const PourRun& run, const Practice& practice,
                 std::optional<double> forecast_age_h = std::nullopt, const PlanScope& scope = {});

}  // namespace slabtide
