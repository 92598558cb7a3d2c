#pragma once

#include <optional>
#include <vector>

#include "slabtide/weather/forecast/forecast.h"
#include "weather/forecast/curve.h"

namespace slabtide {

/// The global irradiance of a forecast as a continuous curve.
///
/// A row's value is the mean over the hour before it, or over the time since the previous row if
/// rows are further apart. The curve keeps these means (mean_keeping_curve). Rows without a value
/// are interpolated if their neighbours with values are up to three hours apart; longer stretches
/// have no value. Status: ours.
class SolarSeries {
 public:
  /// Error: std::invalid_argument for a negative mean or one that is not finite.
  explicit SolarSeries(const Forecast& forecast);

  /// W/m2 at `s` seconds from the forecast's first row; empty where the forecast has none.
  std::optional<double> at(double s) const;

 private:
  struct Stretch {
    double from_s;
    double to_s;
    Curve flux_w_m2;
  };
  std::vector<Stretch> stretches_;
};

}  // namespace slabtide
