#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/toml/table_reader.h"

namespace slabtide {

/// The zone names at `key`. Empty if one of them does not name a zone of the job or comes twice,
/// which has then been reported.
std::optional<std::vector<std::string>> read_zone_names(TableReader& table, std::string_view key,
                                                        const std::vector<std::string>& zones);

/// The same for a list that must name all zones; empty if the key is absent or faulty.
std::vector<std::string> read_placing_sequence(TableReader& table,
                                               const std::vector<std::string>& zones);

}  // namespace slabtide
