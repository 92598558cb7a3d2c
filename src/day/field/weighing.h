#pragma once

#include <string>
#include <vector>

#include "sighting.h"

namespace slabtide {

/// An observation, or two, that cannot be right: they do not count, and the user is told why.
struct Misfit {
  std::vector<std::size_t> readings;  ///< indices into the journal
  std::string why;                    ///< without a full stop
};

/// The sampled days, weighted by what was observed.
struct WeighedDays {
  std::vector<UncertainInputs> uncertain_inputs;
  std::vector<double> weights;  ///< sum 1, never NaN
  /// The number of equally weighted days that would give as much information.
  double effective_days = 0.0;
  bool moved = false;  ///< the days were sampled again around what was observed
  std::vector<Sighting> counted;
  std::vector<Misfit> misfits;

  /// The day to plan by: the weighted mean. An input whose mean is no further from the plan than
  /// chance would put that of so many days stays as planned, because the observations say nothing
  /// about it.
  UncertainInputs mean() const;
};

/// Weights days by the probability of the observations on them (importance weights, in logarithms).
///
/// Observations that cannot be right are left out first: those out of order at one place, those of
/// one event at very different times, and those that differ from all expectations by more than
/// ObservationRules::unbelievable_z deviations, before or after the earlier observations are used.
/// If too few of the sampled days are close to what was observed, as many are sampled again from
/// the widened belief (belief.h). Their weights are divided by the density with which they were
/// drawn, so that sampling more days there does not make any of them more likely.
WeighedDays weigh_days(const DayModel& model, const PourRun& run,
                       const std::vector<Sighting>& sightings, const ObservationRules& rules,
                       const EnsembleSettings& settings);

}  // namespace slabtide
