#pragma once

#include <memory>
#include <optional>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// The weather at one instant.
struct WeatherSample {
  double air_c = 0.0;
  double dew_point_c = 0.0;  ///< never above the air
  double wind_10m_m_s = 0.0;
  double cloud_fraction = 0.0;
  std::optional<double> solar_w_m2;  ///< global horizontal, where the forecast carries it
  double rain_mm_h = 0.0;
  double rain_chance = 0.0;
  bool thunder = false;
};

/// A forecast made continuous. Rows may be 1, 3 or 6 h apart.
///
/// Air, dew point, wind and cloud: monotone cubic (no overshoot) through each one's own rows;
/// humidity through the dew point. Rain: each row's amount spread evenly from the row to the
/// next, so that the total is kept; chance and thunder hold as long. Solar: the
/// row's mean over the hour before it, or since the row before where rows are further apart,
/// turned into instants whose means are the rows' own (mean_keeping_curve); up to three hours
/// without it are filled straight, longer ones have none.
class WeatherSeries {
 public:
  /// Where the forecast lacks air temperature, humidity or wind altogether, or has gaps
  /// over six hours in them, the result carries the error; a gap over three hours is a
  /// warning. Cloud absent: 0 with a warning.
  /// Error: std::invalid_argument for rows that do not rise in time or values that are not
  /// finite: readers refuse those.
  static Parsed<WeatherSeries> from_forecast(const Forecast& forecast);

  /// Where air, dew point and wind are all known.
  UtcTime first() const;
  UtcTime last() const;
  /// Outside [first, last] the nearest end holds; callers check the range first.
  WeatherSample at(UtcTime time) const;
  /// Mean air temperature over a span, for the ground.
  /// Error: std::invalid_argument unless `from` is before `to`.
  double mean_air_c(UtcTime from, UtcTime to) const;

 private:
  struct Curves;
  explicit WeatherSeries(std::shared_ptr<const Curves> curves);

  std::shared_ptr<const Curves> curves_;
};

}  // namespace slabtide
