#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// True for the years a forecast can have (1970 to 2199); keeps later date arithmetic in range.
bool is_forecast_time(UtcTime time);

/// The instant of a text with an offset or Z, within those years; empty for anything else.
std::optional<UtcTime> instant_with_offset(std::string_view text);

/// Seconds since the start of 1970, whole or fractional; empty outside those years or if not
/// finite.
std::optional<UtcTime> instant_from_unix(double seconds);

/// An instant, or why the text is not one, in words for the user.
struct ForecastInstant {
  std::optional<UtcTime> utc;
  std::string fault;
};

/// Reads times that come in order. A time with an offset is unambiguous. A local time that occurs
/// twice (the clocks go back) is taken as the first of the two, unless the previous time was
/// already that instant or later. A time that does not exist (the clocks go forward) is a fault.
class ForecastClock {
 public:
  explicit ForecastClock(TimeZone zone) : zone_(std::move(zone)) {}

  /// Accepts "2026-05-14T08:00", a space instead of the T, seconds, "Z" or an offset.
  ForecastInstant read(std::string_view text);

 private:
  ForecastInstant from_local(LocalTime local) const;

  TimeZone zone_;
  std::optional<UtcTime> before_;
};

}  // namespace slabtide
