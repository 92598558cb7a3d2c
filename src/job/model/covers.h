#pragma once

#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// The covers on a zone: those that name it and those that name no zone.
std::vector<Cover> covers_on(const Zone& zone, const Pour& pour);

}  // namespace slabtide
