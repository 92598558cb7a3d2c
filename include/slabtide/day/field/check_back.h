#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// A reading beside what the plan says of it. Neither is there for what no plan foresees.
struct CheckedObservation {
  std::size_t reading = 0;              ///< index into Journal::readings
  std::optional<UtcTime> planned;       ///< of an event: half of its place has got there
  std::optional<double> planned_value;  ///< of a measurement: mean of its place, then

  /// Minutes that the event came after its planned hour.
  std::optional<double> late_min(const Journal& journal) const;
};

/// The cells that a reading is of: of its part, else of the zone's field. Indices into
/// ZoneRun::cells. Error: std::invalid_argument for a zone that the plan does not have.
struct ObservationPlace {
  std::size_t zone = 0;
  std::vector<std::size_t> cells;
};
ObservationPlace place_of(const Observation& reading, const DayPlan& plan);

/// The resistance that a reading of the setting stands for, psi: a thumbprint is where a stamp
/// may begin, a print no longer taken where it must end, an edge that holds where the detail edge
/// may begin. Empty for other readings.
std::optional<double> setting_psi(ObservationKind kind, const Practice& practice);

/// Every reading, in the order of the journal.
std::vector<CheckedObservation> check_back(const Journal& journal, const Job& job,
                                           const PourRun& run, const DayPlan& plan,
                                           const Practice& practice);

}  // namespace slabtide
