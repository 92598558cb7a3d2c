#pragma once

#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// The covers that lie on a zone: those that name it, and those that name none.
std::vector<Cover> covers_on(const Zone& zone, const Pour& pour);

}  // namespace slabtide
