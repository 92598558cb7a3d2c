#include "exposure_table.h"

#include <algorithm>
#include <cmath>

#include "core/parallel.h"

namespace slabtide {

namespace {

/// Places with the same sun and, to within a hundredth, the same view of the sky share an exposure
/// (ours: 0.01 of a bright sky is under 2 W/m2).
constexpr double sky_views_apart = 100.0;
/// The sky view of a face whose direction the user does not give: half the sky, no sun (ours).
constexpr double face_sky_view = 0.5;

/// Faces in different directions can have the same sunlit hours but different light.
bool similar_light(const CellExposure& a, const CellExposure& b) {
  constexpr double light_apart_w_m2 = 5.0;
  return std::equal(a.shortwave_w_m2.begin(), a.shortwave_w_m2.end(), b.shortwave_w_m2.begin(),
                    b.shortwave_w_m2.end(),
                    [](double x, double y) { return std::abs(x - y) < light_apart_w_m2; });
}

}  // namespace

std::vector<std::vector<std::size_t>> ExposureTable::of_cells(
    const std::vector<Zone>& zones, const std::vector<std::vector<Cell>>& cells, int threads) {
  std::vector<Point> places;
  for (std::size_t zone = 0; zone < zones.size(); ++zone) {
    if (are_alike(zones[zone])) continue;
    for (const Cell& cell : cells[zone]) places.push_back(cell.centre);
  }
  std::vector<CellExposure> looked_at = of_places(places, threads);
  auto next = looked_at.begin();
  std::vector<std::vector<std::size_t>> indices(zones.size());
  for (std::size_t zone = 0; zone < zones.size(); ++zone) {
    if (are_alike(zones[zone])) {
      indices[zone].assign(cells[zone].size(), of_alike_cells(zones[zone], cells[zone]));
      continue;
    }
    for (std::size_t i = 0; i < cells[zone].size(); ++i)
      indices[zone].push_back(keep(std::move(*next++)));
  }
  return indices;
}

std::vector<CellExposure> ExposureTable::of_places(std::span<const Point> places, int threads) {
  std::vector<CellExposure> exposures(places.size());
  in_parallel(places.size(), threads, [&](std::size_t i) { exposures[i] = of_place(places[i]); });
  return exposures;
}

/// Without obstacles all places are alike.
bool ExposureTable::are_alike(const Zone& zone) const {
  return zone.shaded || light_.obstacles().empty();
}

std::size_t ExposureTable::of_alike_cells(const Zone& zone, const std::vector<Cell>& cells) {
  if (zone.shaded)
    return keep_once(shaded_, [&] { return expose_shaded(shaded_sky_view, weather_); });
  return keep_once(open_, [&] { return of_place(cells.front().centre); });
}

CellExposure ExposureTable::of_place(Point at) { return expose(*light_.at(at, path_), weather_); }

std::size_t ExposureTable::of_face(const FormedFace& face, Point at) {
  return keep(face.facing_deg ? expose_face(at, *face.facing_deg, weather_, light_.obstacles())
                              : expose_shaded(face_sky_view, weather_));
}

std::size_t ExposureTable::keep(CellExposure exposure) {
  const auto sky = static_cast<int>(std::lround(exposure.sky_view * sky_views_apart));
  auto& alike = exposures_of_sky_[sky];
  for (const std::size_t index : alike) {
    const CellExposure& kept = exposures_[index];
    if (kept.sunlit_fraction == exposure.sunlit_fraction && similar_light(kept, exposure))
      return index;
  }
  alike.push_back(exposures_.size());
  exposures_.push_back(std::move(exposure));
  return exposures_.size() - 1;
}

}  // namespace slabtide
