#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// A stretch of a zone that gets ready together.
struct ZonePart {
  std::string name;
  std::vector<std::size_t> cells;  ///< indices into ZoneRun::cells
};

/// Splits a zone whose cells get ready at different times into two to four stretches: along
/// the line of a walk; from side to side, or away from a wall near by, for an outline;
/// whichever tells the times apart best (least squares over contiguous stretches).
/// `ready_s` has one entry a cell; border cells and cells that never get ready are left out.
/// Neighbours that differ by less than `differs_s` are one. Empty where the zone behaves as
/// one. In the order they get ready.
std::vector<ZonePart> split_into_parts(const Job& job, const Zone& zone, const ZoneRun& run,
                                       const std::vector<std::optional<double>>& ready_s,
                                       double differs_s);

}  // namespace slabtide
