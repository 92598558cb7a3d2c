#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"

// What the crew observed on the slab and noted, to compare with the plan.

namespace slabtide {

/// What can be observed or measured on the slab.
enum class ObservationKind {
  concrete_temperature,
  placed,
  sheen_gone,
  thumbprint,  ///< a thumb presses in about 1/4 in (6 mm): ready for texture
  print_firm,  ///< the surface no longer takes a print
  edge_held,   ///< the edger leaves a clean edge that stays
  initial_set,
  surface_temperature,
  air_temperature,
  wind,
  humidity,
  sawed,
  crack
};

/// The number of kinds.
inline constexpr std::size_t observation_kind_count = 13;

/// What is measured along with the time.
enum class ObservationMeasure { nothing, temperature, wind, humidity };

/// The word for the command line and the journal: "thumbprint".
std::string_view observation_id(ObservationKind kind);
/// The observation as part of a sentence: "a thumb leaves no dent".
std::string_view observation_words(ObservationKind kind);
/// How to make the observation, for a list of them.
std::string_view observation_hint(ObservationKind kind);
ObservationMeasure observation_measure(ObservationKind kind);
/// True if the observation is always of a zone; the others may be of the whole job.
bool observation_needs_zone(ObservationKind kind);
std::optional<ObservationKind> observation_from_id(std::string_view id);

/// One observation.
struct Observation {
  ObservationKind kind = ObservationKind::thumbprint;
  UtcTime at;
  /// The value measured: °C; m/s, as read at hand height; or relative humidity, 0 to 1. Present
  /// exactly when the kind has a measure.
  std::optional<double> value;
  std::string zone;  ///< empty for the whole job
  std::string part;  ///< the part's name when noted; empty for the whole zone
  SourcePosition where;
  /// What the plan knows the part by, whatever it is called (PlaceId); empty where the journal has
  /// the name alone.
  std::string part_id = {};
};

/// Everything noted about a job.
struct Journal {
  /// The entries in file order, without those that were undone.
  std::vector<Observation> readings;
};

}  // namespace slabtide
