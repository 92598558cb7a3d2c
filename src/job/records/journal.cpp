#include "slabtide/job/records/journal.h"

#include <algorithm>
#include <array>

namespace slabtide {

namespace {

struct Kind {
  std::string_view id;
  std::string_view words;
  std::string_view hint;
  ReadingMeasure measure = ReadingMeasure::nothing;
  bool needs_zone = true;
};

constexpr std::array<Kind, reading_kind_count> kinds{{
    {"concrete", "concrete at discharge", "taken at the chute", ReadingMeasure::temperature, false},
    {"placed", "placed", "the zone's first concrete is in the form"},
    {"sheen-gone", "sheen gone", "no more shine of bleed water on it"},
    {"thumbprint", "thumbprint of 1/4 in", "a thumb pressed firmly goes in about 1/4 in (6 mm)"},
    {"print-firm", "a print is no longer taken",
     "a thumb pressed firmly leaves no more than a mark"},
    {"edge-held", "the edge holds", "the edger leaves a clean edge that stays"},
    {"initial-set", "initial set felt", "it carries a boot that leaves no print"},
    {"surface", "surface temperature", "by a thermometer aimed at the slab, not at water on it",
     ReadingMeasure::temperature},
    {"air", "air temperature", "in the shade, at chest height", ReadingMeasure::temperature, false},
    {"wind", "wind on site", "at arm's height over the slab, mean of a minute",
     ReadingMeasure::wind, false},
    {"humidity", "humidity on site", "in the shade", ReadingMeasure::humidity, false},
    {"sawed", "sawed without raveling", "the first cut that keeps its edges"},
    {"crack", "crack seen", "the first crack across it"},
}};

const Kind& entry(ReadingKind kind) { return kinds[static_cast<std::size_t>(kind)]; }

}  // namespace

std::string_view reading_id(ReadingKind kind) { return entry(kind).id; }
std::string_view reading_words(ReadingKind kind) { return entry(kind).words; }
std::string_view reading_hint(ReadingKind kind) { return entry(kind).hint; }
ReadingMeasure reading_measure(ReadingKind kind) { return entry(kind).measure; }
bool reading_needs_zone(ReadingKind kind) { return entry(kind).needs_zone; }

std::optional<ReadingKind> reading_from_id(std::string_view id) {
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [id](const Kind& kind) { return kind.id == id; });
  if (found == kinds.end()) return std::nullopt;
  return static_cast<ReadingKind>(found - kinds.begin());
}

}  // namespace slabtide
