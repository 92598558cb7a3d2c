#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Where the parts of a zone that may conflict with other zones stand in the file.
struct ZonePlaces {
  SourcePosition name;
  SourcePosition shape;
};

/// About 1000 yd3 at 6 in: more than any crew places in a day, and as many cells as a plan can
/// handle.
inline constexpr double largest_pour_m2 = m2_from_ft2(54000.0);
/// Corners of all outlines together (our choice); keeps the overlap checks quick.
inline constexpr std::size_t max_corners = 4000;
/// Of all zones together (ours): forty flights of ten steps. Each is computed by itself.
inline constexpr std::size_t max_faces = 400;
/// Drawn in all zones together (ours): at two minutes each, four saws for a working day.
inline constexpr std::size_t max_drawn_joints = 1000;

/// Faults between zones that are each valid alone: equal names, overlapping areas, or more concrete
/// than a day takes. Zones without an outline are skipped. `places` has one entry per zone.
std::vector<Diagnostic> check_zones(const std::vector<Zone>& zones,
                                    const std::vector<ZonePlaces>& places, UnitSystem units);

/// "640 ft²", to the nearest unit.
std::string whole_area_text(double m2, UnitSystem units);

}  // namespace slabtide
