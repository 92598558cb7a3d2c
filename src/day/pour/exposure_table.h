#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "slabtide/job/geometry/cells.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"
#include "weather/site/site_light.h"

namespace slabtide {

/// A zone in the shade all day stands beside something: half the sky (ours).
inline constexpr double shaded_sky_view = 0.5;

/// The exposures of a pour's places; returns the same index for equal exposures.
class ExposureTable {
 public:
  ExposureTable(const SiteWeather& weather, SiteLight& light)
      : weather_(weather), light_(light), path_(weather) {}

  /// Zone by zone one index a cell, of which each has at least one. All are looked at in one round
  /// on so many threads, because many zones have few cells.
  std::vector<std::vector<std::size_t>> of_cells(const std::vector<Zone>& zones,
                                                 const std::vector<std::vector<Cell>>& cells,
                                                 int threads);
  std::size_t of_face(const FormedFace& face, Point at);
  std::vector<CellExposure> take() { return std::move(exposures_); }

 private:
  template <class Expose>
  std::size_t keep_once(std::optional<std::size_t>& index, Expose expose) {
    if (!index) index = keep(expose());
    return *index;
  }
  std::size_t of_alike_cells(const Zone& zone, const std::vector<Cell>& cells);
  bool are_alike(const Zone& zone) const;
  CellExposure of_place(Point at);
  /// What of_place gives at each place.
  std::vector<CellExposure> of_places(std::span<const Point> places, int threads);
  std::size_t keep(CellExposure exposure);

  const SiteWeather& weather_;
  SiteLight& light_;
  SunPath path_;
  std::vector<CellExposure> exposures_;
  std::map<int, std::vector<std::size_t>> exposures_of_sky_;
  std::optional<std::size_t> shaded_;
  std::optional<std::size_t> open_;
};

}  // namespace slabtide
