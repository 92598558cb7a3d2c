#include "pour_memo.h"

#include <algorithm>

namespace slabtide {

KeptGrounds::Key KeptGrounds::key_of(const BarePlace& place, double placed_s) {
  return {place.base.kind, place.base.kept, place.base.depth_m, place.base.plastic,
          place.shaded,    place.at.x_m,    place.at.y_m,       placed_s};
}

std::optional<std::vector<GroundPoint>> KeptGrounds::at(const BarePlace& place,
                                                        double placed_s) const {
  const std::lock_guard<std::mutex> lock(mutex_);
  const auto found = grounds_.find(key_of(place, placed_s));
  if (found == grounds_.end()) return std::nullopt;
  return found->second;
}

void KeptGrounds::keep(const BarePlace& place, double placed_s,
                       const std::vector<GroundPoint>& ground) {
  const std::lock_guard<std::mutex> lock(mutex_);
  grounds_.try_emplace(key_of(place, placed_s), ground);
}

KeptGrounds* PourMemo::grounds(const SiteWeather& weather, double ground_c) {
  if (keep_ != SiteLight::Keep::all) return nullptr;
  const std::lock_guard<std::mutex> lock(mutex_);
  const auto found = std::find_if(grounds_.begin(), grounds_.end(), [&](const KeptGrounds& kept) {
    return kept.are_of(weather, ground_c);
  });
  if (found != grounds_.end()) return &*found;
  return &grounds_.emplace_back(weather, ground_c);
}

}  // namespace slabtide
