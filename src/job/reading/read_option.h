#pragma once

#include <string>
#include <vector>

#include "job/toml/table_reader.h"
#include "slabtide/job/model/order_notes.h"

namespace slabtide {

/// One [[option]] table: a change to be compared. `zones` are the names of the job's zones.
OptionNote read_option(TableReader& table, const std::vector<std::string>& zones);

}  // namespace slabtide
