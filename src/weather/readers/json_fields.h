#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "findings.h"
#include "json_value.h"
#include "slabtide/core/civil_time.h"

// Access to a JSON document that may contain anything: a value of the wrong kind becomes a finding
// and is treated as absent.

namespace slabtide {

/// The member, if it is of the wanted kind. Null without a finding if it is absent or null; null
/// with an error if it is of another kind. `path` is the object's own path, for the finding.
const JsonValue* member_of(const JsonValue& object, std::string_view key, JsonValue::Kind wanted,
                           std::string_view path, Findings& findings);

/// The same, but an absent or null member is an error too.
const JsonValue* needed_member_of(const JsonValue& object, std::string_view key,
                                  JsonValue::Kind wanted, std::string_view path,
                                  Findings& findings);

/// The member as an instant with an offset. Empty without a finding if it is absent or null; empty
/// with an error if it is anything else.
std::optional<UtcTime> instant_member_of(const JsonValue& object, std::string_view key,
                                         std::string_view path, Findings& findings);

/// "properties.periods" and "temperature" make "properties.periods.temperature".
std::string joined_path(std::string_view path, std::string_view key);
/// "hourly.time" and 3 make "hourly.time[3]".
std::string indexed_path(std::string_view path, std::size_t index);

}  // namespace slabtide
