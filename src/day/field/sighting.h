#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "slabtide/day/uncertainty/ensemble.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// The readings of one kind at one place, taken together: they share much of their error.
struct Sighting {
  ObservationKind kind = ObservationKind::thumbprint;
  std::string zone;  ///< empty for the whole job
  std::string part;
  std::vector<std::size_t> readings;  ///< indices into the journal
  std::size_t zone_index = 0;
  PartColumns columns;  ///< of the model
  std::vector<double> at_s;
  std::vector<double> values;  ///< what is compared: seconds, °C, the wind's logarithm, a share
  std::vector<std::size_t> surface;  ///< places in ColumnEvents::surface_c
  double variance = 0.0;             ///< of one reading
  double shared_variance = 0.0;      ///< of that, what all have in common
  /// A saw that did not ravel says that the hour had come, not that it just came.
  bool by_then = false;

  double mean_value() const;
  /// Of the mean of all the readings.
  double mean_variance() const;
};

/// The readings that tell something about the uncertain inputs, in the order of their first hour.
/// The model is asked for the surface where it is wanted. A reading that is of the whole zone may
/// have been taken anywhere on it, which counts as error.
std::vector<Sighting> sightings_of(const Job& job, const PourRun& run, const DayPlan& plan,
                                   const Journal& journal, DayModel& model,
                                   const ObservationRules& rules);

/// What each of its readings would be on a day without errors of reading.
std::vector<double> expected_values(const Sighting& sighting, const Sample& sample,
                                    const DayEvents& day, const DayModel& model,
                                    const PourRun& run);

/// Logarithm of the chance of the readings, but for a constant. Each error is normal, in part
/// its own and in part shared.
double log_chance(const Sighting& sighting, std::span<const double> expected);

}  // namespace slabtide
