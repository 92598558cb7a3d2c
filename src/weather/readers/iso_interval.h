#pragma once

#include <optional>
#include <string_view>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// An ISO 8601 duration of weeks, days, hours, minutes and whole seconds, such as "PT1H" or
/// "P6DT15H"; more than zero and at most 366 days. Years and months have no fixed length and are
/// refused, as is anything else.
std::optional<Duration> parse_duration(std::string_view text);

struct IsoInterval {
  UtcTime start;
  Duration length;
};

/// An instant with an offset and a duration, such as "2026-05-14T12:00:00+00:00/PT6H", within the
/// years a forecast can have; empty for anything else.
std::optional<IsoInterval> parse_interval(std::string_view text);

}  // namespace slabtide
