#include "day_option.h"

#include <fmt/format.h>

#include "job/toml/times.h"
#include "request/plan/moment.h"

namespace slabtide {

Option day_option() {
  return {"date", "DAY", "the day of the pour: 5/14/2026, May 14, Fri, tomorrow or 2026-05-14",
          false};
}

Option now_option() {
  return {"now", "TIME", "plan as if it were this time (2026-05-13 6:00 PM); else the clock",
          false};
}

AskedDay typed_day(const std::string& text, const ParsedLine& line, const TimeZone& zone,
                   bool month_first) {
  UtcTime now = boost::posix_time::second_clock::universal_time();
  if (const auto said = line.text("now")) {
    const auto moment = read_moment(*said, zone);
    if (!moment) return {std::nullopt, moment_fault(*said)};
    now = *moment;
  }
  const TypedDate typed = parse_pour_date(text, {month_first, zone.local_from_utc(now).date()});
  if (typed.date) return {typed.date, {}};
  if (!typed.fault.empty()) return {std::nullopt, fmt::format("--date: {}", typed.fault)};
  return {std::nullopt, fmt::format("--date: got '{}', expected {}", text, expected_pour_date())};
}

AskedDay asked_day(const ParsedLine& line, const TimeZone& zone, bool month_first) {
  const auto text = line.text("date");
  return text ? typed_day(*text, line, zone, month_first) : AskedDay{};
}

}  // namespace slabtide
