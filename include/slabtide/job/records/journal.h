#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"

// What the crew saw on the slab and noted, beside what the plan computed.

namespace slabtide {

/// What can be seen or measured on the slab.
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

/// How many there are.
inline constexpr std::size_t observation_kind_count = 13;

/// What is noted besides the moment.
enum class ObservationMeasure { nothing, temperature, wind, humidity };

/// The word for the command line and the journal: "print-firm".
std::string_view observation_id(ObservationKind kind);
/// As it stands in a sentence: "a print is no longer taken".
std::string_view observation_words(ObservationKind kind);
/// How to take it, for a list.
std::string_view observation_hint(ObservationKind kind);
ObservationMeasure observation_measure(ObservationKind kind);
/// Of a zone always; the others may be of the whole job.
bool observation_needs_zone(ObservationKind kind);
std::optional<ObservationKind> observation_from_id(std::string_view id);

/// One thing seen.
struct Observation {
  ObservationKind kind = ObservationKind::thumbprint;
  UtcTime at;
  /// What was measured: °C; m/s, where it was read, at the height of a hand; or the relative
  /// humidity, 0 to 1. Present where the kind has a measure, and only there.
  std::optional<double> value;
  std::string zone;  ///< empty for the whole job
  std::string part;  ///< as it was called when noted; empty for the whole zone
  SourcePosition where;
};

/// All that was noted of a job.
struct Journal {
  /// What counts: in the order of the file, without what was undone.
  std::vector<Observation> readings;
};

}  // namespace slabtide
