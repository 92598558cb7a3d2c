#pragma once

#include "job/toml/table_reader.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Reads [crew] and every [[hand]]: the hands are the first of the finishers, and all of them if
/// their number is not given. One without a name is called by a letter.
Crew read_crew(TableReader& root);

}  // namespace slabtide
