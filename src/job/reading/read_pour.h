#pragma once

#include <string>
#include <vector>

#include "job/toml/table_reader.h"
#include "job/toml/times.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The [pour] table. `zones` are the names of the job's zones in the order of the file.
Pour read_pour(TableReader& table, const Clock& clock, const std::vector<std::string>& zones);

}  // namespace slabtide
