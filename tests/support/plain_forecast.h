#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide::testing {

inline UtcTime at_utc(Date date, double hour) {
  return after_seconds(UtcTime(date), hour * 3600.0);
}

/// Rows of 15 °C, dew point 8 °C, 3 m/s and a clear sky, for a test to modify.
inline Forecast plain_forecast(UtcTime start, std::size_t rows, double hours_apart = 1.0) {
  Forecast forecast;
  for (std::size_t i = 0; i < rows; ++i) {
    ForecastHour row;
    row.at = after_seconds(start, hours_apart * 3600.0 * static_cast<double>(i));
    row.air_c = 15.0;
    row.dew_point_c = 8.0;
    row.wind_10m_m_s = 3.0;
    row.cloud_fraction = 0.0;
    forecast.hours.push_back(row);
  }
  return forecast;
}

inline Obstacle wall(Point from, Point to, double height_m, double light_through = 0.0) {
  Obstacle obstacle;
  obstacle.kind = ObstacleKind::wall;
  obstacle.from = from;
  obstacle.to = to;
  obstacle.height_m = height_m;
  obstacle.light_through = light_through;
  return obstacle;
}

inline Obstacle tree(Point centre, double radius_m, double height_m, double light_through = 0.0) {
  Obstacle obstacle;
  obstacle.kind = ObstacleKind::tree;
  obstacle.from = centre;
  obstacle.radius_m = radius_m;
  obstacle.height_m = height_m;
  obstacle.light_through = light_through;
  return obstacle;
}

}  // namespace slabtide::testing
