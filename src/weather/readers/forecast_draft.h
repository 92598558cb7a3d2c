#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "findings.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"
#include "weather_quantity.h"

// What all readers of forecasts share between the document and the Forecast.

namespace slabtide {

/// An hour while it is read: SI values by WeatherQuantity, humidity still beside dew point.
struct DraftHour {
  UtcTime at;
  std::array<std::optional<double>, weather_quantity_count> values;
  bool thunder = false;

  std::optional<double>& operator[](WeatherQuantity quantity) {
    return values.at(static_cast<std::size_t>(quantity));
  }
  const std::optional<double>& operator[](WeatherQuantity quantity) const {
    return values.at(static_cast<std::size_t>(quantity));
  }
  /// True where the hour says how damp the air is, one way or the other.
  bool has_moisture() const;
  /// True where it has all that a plan cannot do without: air, moisture and wind.
  bool is_usable() const;
};

/// A stretch over which a quantity is not told, between two hours that tell it.
struct ForecastGap {
  /// Absent where the hours themselves are missing. `dew_point` stands for moisture.
  std::optional<WeatherQuantity> quantity;
  std::size_t before = 0;  ///< index of the last hour that tells it
  std::size_t after = 0;   ///< index of the first hour that tells it again
};

/// Hours further apart than this are not filled by interpolation.
inline constexpr double longest_filled_gap_s = 3.0 * 3600.0;

/// Gaps over one hour, in time; `hours` rise in time. Only air, moisture, wind and cloud are
/// looked at: the others may come and go. A quantity that no hour tells has no gap.
std::vector<ForecastGap> find_gaps(const std::vector<DraftHour>& hours);

/// Why the hour contradicts itself: a dew point well above the air. Empty where it does not.
/// A dew point up to 2 K above is rounding of the source and is lowered to the air later.
std::optional<std::string> contradiction(const DraftHour& hour);

/// Puts a value into the hour, in SI. Result: why it is impossible, in words for the user;
/// empty where it was put.
std::optional<std::string> put(DraftHour& hour, WeatherQuantity quantity, double value,
                               WeatherUnit unit);

struct DraftForecast {
  std::string source;
  std::optional<UtcTime> issued;
  std::vector<DraftHour> hours;  ///< rise in time
};

/// The draft as a forecast: dew point from humidity where there is no dew point; hours at
/// either end that are not usable left out; what was left out or must be filled told in
/// `notes`, in local time. No value where `findings` hold an error or no hour is usable; the
/// latter becomes an error at `where`.
Parsed<Forecast> conclude(DraftForecast draft, const TimeZone& zone, Findings findings,
                          SourcePosition where);

}  // namespace slabtide
