#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "findings.h"
#include "slabtide/core/clock.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"
#include "weather_quantity.h"

// What all forecast readers share between the document and the Forecast.

namespace slabtide {

/// An hour while it is being read: SI values by WeatherQuantity, with both humidity and dew point.
struct DraftHour {
  UtcTime at;
  std::array<std::optional<double>, weather_quantity_count> values;
  std::array<WeatherUnit, weather_quantity_count> written_in{};  ///< °C unless `put` was told else
  bool thunder = false;

  std::optional<double>& operator[](WeatherQuantity quantity) {
    return values.at(static_cast<std::size_t>(quantity));
  }
  const std::optional<double>& operator[](WeatherQuantity quantity) const {
    return values.at(static_cast<std::size_t>(quantity));
  }
  /// Takes one value over from another hour, with the unit it was written in.
  void take(WeatherQuantity quantity, const DraftHour& other);
  /// The value in the unit it was written in: "62.5 °F". Error: std::bad_optional_access if it is
  /// not given.
  std::string as_written(WeatherQuantity quantity) const;
  /// True if the hour gives its moisture, as dew point or humidity.
  bool has_moisture() const;
  /// True if it has everything a plan requires: air, moisture and wind.
  bool is_usable() const;
};

/// A stretch without a value of some quantity, between two hours that have one.
struct ForecastGap {
  /// Absent if the hours themselves are missing. `dew_point` means moisture in general.
  std::optional<WeatherQuantity> quantity;
  std::size_t before = 0;  ///< index of the last hour that has it
  std::size_t after = 0;   ///< index of the first hour that has it again
};

/// Values further apart than this are not interpolated.
inline constexpr double longest_filled_gap_s = 3.0 * 3600.0;

/// Gaps of over one hour, in order of time; `hours` must increase in time. Only air, moisture, wind
/// and cloud are checked: the others may come and go. A quantity that no hour has counts as no gap.
std::vector<ForecastGap> find_gaps(const std::vector<DraftHour>& hours);

/// Why the hour contradicts itself, which is a dew point well above the air temperature; empty if
/// it does not. A dew point up to 2 K above is taken for rounding and is lowered to the air
/// temperature later.
std::optional<std::string> contradiction(const DraftHour& hour);

/// Stores a value in the hour, in SI. Returns why it is impossible, in words for the user; empty if
/// it was stored.
std::optional<std::string> put(DraftHour& hour, WeatherQuantity quantity, double value,
                               WeatherUnit unit);

struct DraftForecast {
  std::string source;
  std::optional<UtcTime> issued;
  std::vector<DraftHour> hours;  ///< increasing in time
};

/// The draft as a forecast. Dew point is computed from humidity where missing; unusable hours at
/// either end are left out; `notes` say, in local time, what was left out or must be interpolated.
/// No value if `findings` has an error or no hour is usable; the latter becomes an error at
/// `where`.
Parsed<Forecast> conclude(DraftForecast draft, const Clock& clock, Findings findings,
                          SourcePosition where);

}  // namespace slabtide
