#pragma once

#include <optional>
#include <vector>

#include "slabtide/weather/forecast/forecast.h"
#include "weather/forecast/curve.h"

namespace slabtide {

/// The global irradiance of a forecast made continuous.
///
/// A row's value is the mean over the hour before it, or since the row before where rows are
/// further apart. It becomes instants whose means are the rows' own (mean_keeping_curve).
/// Rows that lack it are filled straight where those that have it are up to three hours
/// apart; longer stretches have none. Status: ours.
class SolarSeries {
 public:
  /// Error: std::invalid_argument for a negative mean or one that is not finite.
  explicit SolarSeries(const Forecast& forecast);

  /// W/m2 at seconds from the forecast's first row; empty where the forecast has none.
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
