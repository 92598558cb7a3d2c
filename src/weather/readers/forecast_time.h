#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// True for the years a forecast can be of (1970 to 2199); keeps later date sums in range.
bool is_forecast_time(UtcTime time);

/// "Thu 14:00" in local time.
std::string day_and_clock(UtcTime time, const TimeZone& zone);

/// The instant of a text that carries an offset or Z, within those years; empty for anything
/// else.
std::optional<UtcTime> instant_with_offset(std::string_view text);

/// Seconds since the start of 1970, whole or not; empty outside those years or where not
/// finite.
std::optional<UtcTime> instant_from_unix(double seconds);

/// An instant or why it is none, in words for the user.
struct ForecastInstant {
  std::optional<UtcTime> utc;
  std::string fault;
};

/// Reads times that come in order. With an offset they stand for themselves; a local time
/// that happens twice (the clocks go back) is the first of the two unless the time before
/// already was that or later; one that does not exist (the clocks go forward) is a fault.
class ForecastClock {
 public:
  explicit ForecastClock(TimeZone zone) : zone_(std::move(zone)) {}

  /// "2026-05-14T08:00", a space for the T, seconds, "Z" or an offset are taken.
  ForecastInstant read(std::string_view text);

 private:
  ForecastInstant from_local(LocalTime local) const;

  TimeZone zone_;
  std::optional<UtcTime> before_;
};

}  // namespace slabtide
