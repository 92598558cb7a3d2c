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
  double dew_point_c = 0.0;  ///< never above the air temperature
  double wind_10m_m_s = 0.0;
  double cloud_fraction = 0.0;
  std::optional<double> solar_w_m2;  ///< global horizontal, if the forecast has it
  double rain_mm_h = 0.0;
  double rain_chance = 0.0;
  bool thunder = false;
};

/// A forecast made continuous. Rows may be 1, 3 or 6 h apart.
///
/// Air, dew point, wind and cloud: monotone cubic (no overshoot) through the rows that have each;
/// humidity from the dew point. Rain: each row's amount spread evenly up to the next row, so that
/// the total is kept; chance and thunder hold as long. Solar: a row's value is the mean over the
/// hour before it, or over the time since the previous row if rows are further apart; the curve
/// keeps these means (mean_keeping_curve). Up to three hours without values are interpolated;
/// longer stretches have none.
class WeatherSeries {
 public:
  /// If the forecast lacks air temperature, humidity or wind altogether, or has gaps of over six
  /// hours in them, the result has an error; a gap of over three hours is a warning. If cloud is
  /// absent it is 0, with a warning. Error: std::invalid_argument for rows that do not increase in
  /// time or values that are not finite, which the readers refuse.
  static Parsed<WeatherSeries> from_forecast(const Forecast& forecast);

  /// The range in which air, dew point and wind are all known.
  UtcTime first() const;
  UtcTime last() const;
  /// Outside [first, last] the nearest end value holds; callers check the range first.
  WeatherSample at(UtcTime time) const;
  /// Mean air temperature over a span, for the ground temperature.
  /// Error: std::invalid_argument unless `from` is before `to`.
  double mean_air_c(UtcTime from, UtcTime to) const;

 private:
  struct Curves;
  explicit WeatherSeries(std::shared_ptr<const Curves> curves);

  std::shared_ptr<const Curves> curves_;
};

}  // namespace slabtide
