#pragma once

#include <string>
#include <vector>

#include "sighting.h"

namespace slabtide {

/// A reading, or two, that cannot be: they do not count, and the user is told why.
struct Misfit {
  std::vector<std::size_t> readings;  ///< indices into the journal
  std::string why;                    ///< without a full stop
};

/// The days that may come, weighed by what was seen.
struct WeighedDays {
  std::vector<UncertainInputs> uncertain_inputs;
  std::vector<double> weights;  ///< sum 1, never NaN
  /// How many days of equal weight would tell as much.
  double effective_days = 0.0;
  bool moved = false;  ///< the days were sampled again about what was seen
  std::vector<Sighting> counted;
  std::vector<Misfit> misfits;

  /// The day to plan by: the weighed mean. What lies no further from the plan than so many days
  /// would by chance stays as planned: the readings do not speak of it.
  UncertainInputs mean() const;
};

/// Weighs days by the chance of what was seen on them (importance weights, in logarithms).
///
/// Readings that cannot be are left out first: out of order on one place, far from each other
/// where they are of one event, further from all that is expected than
/// ObservationRules::unbelievable_z deviations, before or after the readings before them.
/// Where the days that were drawn are too few near what was seen, as many are sampled again from
/// the belief (belief.h), widened, and their weights divided by the density they were drawn
/// from, so that drawing more days there makes none of them likelier.
WeighedDays weigh_days(const DayModel& model, const PourRun& run,
                       const std::vector<Sighting>& sightings, const ObservationRules& rules,
                       const EnsembleSettings& settings);

}  // namespace slabtide
