#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Where the parts of a zone stand that others may conflict with.
struct ZonePlaces {
  SourcePosition name;
  SourcePosition shape;
};

/// About 1000 yd3 at 6 in: more than any crew places in a day, and as many cells as a plan takes.
inline constexpr double largest_pour_m2 = m2_from_ft2(54000.0);
/// Of all outlines together (ours); keeps the tests for overlaps quick.
inline constexpr std::size_t max_corners = 4000;

/// What is wrong between zones that are each in order: names that are alike, areas that
/// overlap, more of them than a day takes. Zones without an outline are passed over. `places` has
/// an entry a zone.
std::vector<Diagnostic> check_zones(const std::vector<Zone>& zones,
                                    const std::vector<ZonePlaces>& places, UnitSystem units);

/// "640 ft²", to the whole unit.
std::string whole_area_text(double m2, UnitSystem units);

}  // namespace slabtide
