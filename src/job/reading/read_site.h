#pragma once

#include "job/toml/table_reader.h"
#include "slabtide/core/time_zone.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The [site] table.
Site read_site(TableReader& table, const TimeZoneLoader& load_time_zone);

}  // namespace slabtide
