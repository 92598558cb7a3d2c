#include "covers.h"

#include <algorithm>

namespace slabtide {

std::vector<Cover> covers_on(const Zone& zone, const Pour& pour) {
  std::vector<Cover> result;
  for (const Cover& cover : pour.covers) {
    const auto& names = cover.zones;
    if (names.empty() || std::find(names.begin(), names.end(), zone.name) != names.end())
      result.push_back(cover);
  }
  return result;
}

std::optional<CuringKind> curing_cover(const Zone& zone, const Pour& pour) {
  const bool covers = pour.curing == CuringKind::plastic || pour.curing == CuringKind::blanket;
  if (!covers || !covers_on(zone, pour).empty()) return std::nullopt;
  return pour.curing;
}

bool lies_under_blankets(const Zone& zone, const Pour& pour) {
  const std::vector<Cover> covers = covers_on(zone, pour);
  return std::any_of(covers.begin(), covers.end(),
                     [](const Cover& cover) { return cover.kind == CuringKind::blanket; }) ||
         curing_cover(zone, pour) == CuringKind::blanket;
}

std::string_view cover_words(CuringKind cover) {
  return cover == CuringKind::plastic ? "plastic" : "blanket";
}

}  // namespace slabtide
