#pragma once

#include <optional>
#include <vector>

#include "job/toml/table_reader.h"
#include "slabtide/job/model/mix.h"

namespace slabtide {

/// One [[mix.admixture]] or [[zone.admixture]] table.
Admixture read_admixture(TableReader& table);

/// All [[admixture]] tables within `table`.
std::vector<Admixture> read_admixtures(TableReader& table);

/// The same for admixtures that replace others: `admixtures = []` means none; if nothing is given,
/// nothing changes.
std::optional<std::vector<Admixture>> read_own_admixtures(TableReader& table);

}  // namespace slabtide
