#pragma once

#include "slabtide/job/job.h"
#include "table_reader.h"
#include "times.h"

namespace slabtide {

/// One [[zone]] table. `start` is the pour's.
Zone read_zone(TableReader& table, const PourDay& day, UtcTime start);

}  // namespace slabtide
