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

}  // namespace slabtide
