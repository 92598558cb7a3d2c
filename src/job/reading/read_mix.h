#pragma once

#include "job/toml/table_reader.h"
#include "slabtide/job/model/mix.h"

namespace slabtide {

/// The [mix] table.
Mix read_mix(TableReader& table);

}  // namespace slabtide
