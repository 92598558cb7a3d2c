#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/weather/forecast.h"
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

/// The drafts as a forecast: dew point from humidity where there is no dew point; hours at
/// either end that are not usable left out; what was left out or must be filled told in
/// `notes`, in local time. `hours` rise in time and hold possible values only. The result
/// may be empty.
Forecast settle(std::vector<DraftHour> hours, std::string source, std::optional<UtcTime> issued,
                const TimeZone& zone);

}  // namespace slabtide
