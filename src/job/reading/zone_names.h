#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/toml/table_reader.h"

namespace slabtide {

/// The names of zones at `key`, given those of the job; empty where one of them is not that of
/// a zone or comes twice, which has been reported.
std::optional<std::vector<std::string>> read_zone_names(TableReader& table, std::string_view key,
                                                        const std::vector<std::string>& zones);

/// The same, where all zones must be named; empty where the key is absent or faulty.
std::vector<std::string> read_placing_sequence(TableReader& table,
                                               const std::vector<std::string>& zones);

}  // namespace slabtide
