#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// A stretch of a zone that becomes ready together.
struct ZonePart {
  std::string id;  ///< as PlaceId::part
  std::string name;
  std::vector<std::size_t> cells;  ///< indices into ZoneRun::cells
};

/// Splits a zone whose cells become ready at different times into two to four stretches: along the
/// line of a walkway; for an outline from side to side, or away from a nearby wall; whichever
/// separates the times best (least squares over contiguous stretches). `ready_s` has one entry per
/// cell; border cells and cells that never become ready are left out. Neighbours that differ by
/// less than `differs_s` are merged. Empty if the zone behaves uniformly. In the order in which
/// they become ready.
std::vector<ZonePart> split_into_parts(const Job& job, const Zone& zone, const ZoneRun& run,
                                       const std::vector<std::optional<double>>& ready_s,
                                       double differs_s);

}  // namespace slabtide
