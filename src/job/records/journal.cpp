#include "slabtide/job/records/journal.h"

#include <algorithm>
#include <array>

namespace slabtide {

namespace {

struct Kind {
  std::string_view id;
  std::string_view words;
  std::string_view hint;
  ObservationMeasure measure = ObservationMeasure::nothing;
  bool needs_zone = true;
};

constexpr std::array<Kind, observation_kind_count> kinds{{
    {"concrete", "concrete at discharge", "taken at the chute", ObservationMeasure::temperature,
     false},
    {"placed", "placed", "the zone's first concrete is in the form"},
    {"sheen-gone", "sheen gone", "no more shine of bleed water on it"},
    {"thumbprint", "thumbprint of 1/4 in", "a thumb pressed firmly goes in about 1/4 in (6 mm)"},
    {"no-dent", "a thumb leaves no dent",
     "a thumb pressed firmly leaves no more than a mark: too firm to stamp"},
    {"edge-held", "the edge holds", "the edger leaves a clean edge that stays"},
    {"initial-set", "initial set felt", "a boot on it leaves no print"},
    {"surface", "surface temperature", "by a thermometer aimed at the slab, not at water on it",
     ObservationMeasure::temperature},
    {"air", "air temperature", "in the shade, at chest height", ObservationMeasure::temperature,
     false},
    {"wind", "wind on site", "at arm's height over the slab, mean of a minute",
     ObservationMeasure::wind, false},
    {"humidity", "humidity on site", "in the shade", ObservationMeasure::humidity, false},
    {"sawed", "sawed without raveling", "the first cut that keeps its edges"},
    {"crack", "crack seen", "the first crack across it"},
}};

const Kind& entry(ObservationKind kind) { return kinds[static_cast<std::size_t>(kind)]; }

}  // namespace

std::string_view observation_id(ObservationKind kind) { return entry(kind).id; }
std::string_view observation_words(ObservationKind kind) { return entry(kind).words; }
std::string_view observation_hint(ObservationKind kind) { return entry(kind).hint; }
ObservationMeasure observation_measure(ObservationKind kind) { return entry(kind).measure; }
bool observation_needs_zone(ObservationKind kind) { return entry(kind).needs_zone; }

std::optional<ObservationKind> observation_from_id(std::string_view id) {
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [id](const Kind& kind) { return kind.id == id; });
  // As journals called it that were kept before: it says as well that it takes a print.
  if (id == "print-firm") return ObservationKind::print_firm;
  if (found == kinds.end()) return std::nullopt;
  return static_cast<ObservationKind>(found - kinds.begin());
}

}  // namespace slabtide
