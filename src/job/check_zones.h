#pragma once

#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/job/job.h"

namespace slabtide {

/// What is wrong between zones that are each in order: names that are alike, areas that
/// overlap. Zones without an outline are passed over.
std::vector<Diagnostic> check_zones(const std::vector<Zone>& zones, UnitSystem units);

}  // namespace slabtide
