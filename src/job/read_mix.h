#pragma once

#include "slabtide/job/mix.h"
#include "table_reader.h"

namespace slabtide {

/// The [mix] table.
Mix read_mix(TableReader& table);

}  // namespace slabtide
