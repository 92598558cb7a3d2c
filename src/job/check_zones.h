#pragma once

#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/job/job.h"

namespace slabtide {

/// Where the parts of a zone stand that others may conflict with.
struct ZonePlaces {
  SourcePosition name;
  SourcePosition shape;
};

/// What is wrong between zones that are each in order: names that are alike, areas that
/// overlap. Zones without an outline are passed over. `places` has an entry a zone.
std::vector<Diagnostic> check_zones(const std::vector<Zone>& zones,
                                    const std::vector<ZonePlaces>& places, UnitSystem units);

}  // namespace slabtide
