#include "moment.h"

#include <fmt/format.h>

#include "job/model/limits.h"
#include "slabtide/core/civil_time.h"

namespace slabtide {

namespace {

bool is_planned_year(const ParsedInstant& instant) {
  return limits::years.holds(static_cast<double>(instant.local.date().year()));
}

}  // namespace

std::optional<UtcTime> read_moment(std::string_view text, const TimeZone& zone) {
  const auto instant = parse_typed_instant(text);
  if (!instant || !is_planned_year(*instant)) return std::nullopt;
  return instant->offset ? instant->local - *instant->offset
                         : zone.utc_from_local(instant->local).utc;
}

std::string moment_fault(std::string_view text) {
  if (!parse_typed_instant(text)) {
    return fmt::format("--now: got '{}', expected a time such as \"2026-05-13 6:00 PM\"", text);
  }
  return fmt::format("--now: got '{}', expected a year from {:.0f} to {:.0f}", text,
                     limits::years.low, limits::years.high);
}

}  // namespace slabtide
