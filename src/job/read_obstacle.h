#pragma once

#include "slabtide/job/job.h"
#include "table_reader.h"

namespace slabtide {

/// One [[obstacle]] table.
Obstacle read_obstacle(TableReader& table);

}  // namespace slabtide
