#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "slabtide/day/uncertainty/ensemble.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// The observations of one kind at one place, which share much of their error.
struct Sighting {
  ObservationKind kind = ObservationKind::thumbprint;
  std::optional<PlaceId> place;       ///< absent for the whole job
  std::string place_words;            ///< as it was called when noted
  std::vector<std::size_t> readings;  ///< indices into the journal
  PartColumns columns;                ///< of the model
  std::vector<double> at_s;
  std::vector<double> values;  ///< the quantity compared: seconds, °C, logarithm of the wind, or a
                               ///< fraction
  std::vector<std::size_t> surface;  ///< indices into ColumnEvents::surface_c
  double variance = 0.0;             ///< of one observation
  double shared_variance = 0.0;      ///< the part of it that all observations share
  /// A saw that did not ravel shows that its time has come, but not that it has only just come.
  bool by_then = false;

  std::size_t zone() const { return place ? place->zone : 0; }
  double mean_value() const;
  /// Variance of the mean of all observations.
  double mean_variance() const;
};

/// The observations that say something about the uncertain inputs, in order of their first time.
/// Registers the surface temperatures needed with the model. An observation of a whole zone may
/// have been made anywhere on it, which counts as an error.
std::vector<Sighting> sightings_of(const PourRun& run, const DayPlan& plan, const Journal& journal,
                                   DayModel& model, const ObservationRules& rules);

/// What each of the observations would be on a day, without errors of observation.
std::vector<double> expected_values(const Sighting& sighting, const Sample& sample,
                                    const DayEvents& day, const DayModel& model,
                                    const PourRun& run);

/// Logarithm of the probability of the observations, up to a constant. Each error is normal, partly
/// individual and partly shared.
double log_chance(const Sighting& sighting, std::span<const double> expected);

}  // namespace slabtide
