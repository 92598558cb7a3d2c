#pragma once

#include "job/toml/table_reader.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// One [[obstacle]] table.
Obstacle read_obstacle(TableReader& table);

}  // namespace slabtide
