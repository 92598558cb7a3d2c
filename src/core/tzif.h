#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "posix_rule.h"

namespace slabtide {

/// From `at_s` (seconds since 1970, UTC) on, local minus UTC is `offset_s`.
struct OffsetChange {
  std::int64_t at_s = 0;
  std::int64_t offset_s = 0;
  std::string name;  ///< what civil time is then called: "CDT"
};

/// The offsets of a place through all time: the listed changes, then the rule.
struct OffsetHistory {
  std::int64_t first_offset_s = 0;    ///< before the first change
  std::string first_name;             ///< likewise
  std::vector<OffsetChange> changes;  ///< in order of time
  PosixRule rule;

  [[nodiscard]] std::int64_t offset_s(std::int64_t utc_s) const;
  [[nodiscard]] const std::string& name(std::int64_t utc_s) const;
};

/// The contents of a time-zone file, or why it could not be read.
struct ParsedTzif {
  std::optional<OffsetHistory> history;
  std::string problem;  ///< in words, if it could not be read
};

/// Reads a time-zone file of version 2 or later, without leap seconds.
/// Source: RFC 8536, sections 3.1 to 3.3.
ParsedTzif parse_tzif(std::string_view bytes);

}  // namespace slabtide
