#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast.h"

namespace slabtide {

/// The weather at one instant.
struct WeatherSample {
  double air_c = 0.0;
  double dew_point_c = 0.0;
  double wind_10m_m_s = 0.0;
  double cloud_share = 0.0;
  std::optional<double> solar_w_m2;  ///< global horizontal, where the forecast carries it
  double rain_mm_h = 0.0;
  double rain_chance = 0.0;
  bool thunder = false;
};

/// A forecast made continuous: monotone cubic (no overshoot) between its rows,
/// humidity through the dew point, rain as amounts spread over their hour.
class WeatherSeries {
 public:
  /// Where the forecast lacks air temperature, humidity or wind altogether, or has gaps
  /// over three hours, the result carries the error. Cloud absent: 0 with a warning.
  static Reading<WeatherSeries> from_forecast(const Forecast& forecast);

  UtcTime first() const;
  UtcTime last() const;
  /// Outside [first, last] the nearest end holds; callers check the range first.
  WeatherSample at(UtcTime time) const;
  /// Mean air temperature over a span, for the ground.
  double mean_air_c(UtcTime from, UtcTime to) const;

 private:
  struct Curves;
  std::shared_ptr<const Curves> curves_;
};

}  // namespace slabtide
