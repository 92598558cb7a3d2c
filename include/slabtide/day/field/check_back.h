#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// An observation and what the plan says about it. Both values are absent for what no plan
/// predicts.
struct CheckedObservation {
  std::size_t reading = 0;              ///< index into Journal::readings
  std::optional<UtcTime> planned;       ///< for an event: when half of its place reached it
  std::optional<double> planned_value;  ///< for a measurement: the mean over its place at that time

  /// Minutes by which the event came after its planned time.
  std::optional<double> late_min(const Journal& journal) const;
};

/// Where a reading was taken: its part by the id that was noted, or, where none was, by the name
/// that the plan gives it; what the plan does not have is the whole zone. Error:
/// std::invalid_argument for a zone that the plan does not have.
PlaceId place_of(const Observation& reading, const DayPlan& plan);

/// The cells that a reading there is of: of its part, else of the zone's field. Indices into
/// ZoneRun::cells.
const std::vector<std::size_t>& cells_at(const PlaceId& place, const DayPlan& plan);

/// The resistance that an observation of the set means, psi: a thumbprint is where stamping may
/// begin, a print no longer taken is where it must end, and an edge that holds is where the detail
/// edge may begin. Empty for other observations.
std::optional<double> setting_psi(ObservationKind kind, const Practice& practice);

/// Checks every observation, in the order of the journal.
std::vector<CheckedObservation> check_back(const Journal& journal, const Job& job,
                                           const PourRun& run, const DayPlan& plan,
                                           const Practice& practice);

}  // namespace slabtide
