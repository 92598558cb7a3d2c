#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// One row of a forecast as given; values that the source leaves out are absent.
struct ForecastHour {
  UtcTime at;
  std::optional<double> air_c;
  std::optional<double> dew_point_c;
  std::optional<double> wind_10m_m_s;
  std::optional<double> gust_10m_m_s;
  std::optional<double> cloud_fraction;  ///< 0 to 1
  /// Global horizontal irradiance, mean of the hour that ends at `at`.
  std::optional<double> solar_w_m2;
  /// Rain in the hour that starts at `at`.
  std::optional<double> rain_mm;
  /// Chance of rain in the hour that starts at `at`, 0 to 1.
  std::optional<double> rain_chance;
  bool thunder = false;
};

/// A forecast, whatever file it came from. Rows increase in time, without duplicates.
struct Forecast {
  /// For the report: "hourly CSV", "typed high and low".
  std::string source;
  std::optional<UtcTime> issued;
  std::vector<ForecastHour> hours;
  /// For the report, such as hours that were interpolated.
  std::vector<std::string> notes;
};

}  // namespace slabtide
