#pragma once

#include "slabtide/job/job.h"
#include "table_reader.h"

namespace slabtide {

/// The [site] table.
Site read_site(TableReader& table);

}  // namespace slabtide
