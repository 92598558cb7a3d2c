#pragma once

#include "job/toml/table_reader.h"
#include "job/toml/times.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// One [[zone]] table. `start` is the start of the pour, `names` are those of all zones.
Zone read_zone(TableReader& table, const PourDay& day, UtcTime start,
               const std::vector<std::string>& names);

}  // namespace slabtide
