#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/job.h"
#include "slabtide/weather/weather_series.h"

namespace slabtide {

/// Evenly spaced instants.
struct TimeGrid {
  UtcTime start;
  double step_s = 300.0;
  std::size_t count = 0;

  double end_s() const { return count == 0 ? 0.0 : step_s * static_cast<double>(count - 1); }
};

/// What all of the site shares, one entry an instant of the grid. Every vector has
/// grid.count entries.
struct SiteWeather {
  TimeGrid grid;
  double air_pressure_pa = 101325.0;
  double wind_ratio = 0.45;  ///< wind at the slab over the wind at 10 m
  std::vector<double> air_c;
  std::vector<double> dew_point_c;
  std::vector<double> vapour_pressure_pa;
  std::vector<double> wind_slab_m_s;
  std::vector<double> cloud_share;
  std::vector<double> sky_emissivity;
  std::vector<double> beam_horizontal_w_m2;  ///< direct sun on the horizontal
  std::vector<double> diffuse_w_m2;          ///< sky light on the open horizontal
  std::vector<double> sun_elevation_deg;
  std::vector<double> sun_azimuth_deg;  ///< clockwise from north
  std::vector<double> rain_mm_h;
  std::vector<double> rain_chance;
  std::vector<char> thunder;  ///< 1 where it is forecast
};

/// The named settings' ratio, or the measured one.
double wind_ratio(const Site& site);

SiteWeather site_weather(const Site& site, const WeatherSeries& series, const TimeGrid& grid);

/// What one place on the site sees, one entry an instant of the grid.
struct CellExposure {
  double sky_view = 1.0;  ///< share of the sky it sees, 0 to 1
  /// Shortwave that arrives: beam through the obstacles plus its share of the sky light.
  std::vector<double> shortwave_w_m2;
  /// Share of the direct light that reaches it, 0 (shade) to 1; 0 with the sun down.
  std::vector<double> sunlit_share;
};

/// A horizontal cell of the slab.
CellExposure expose(Point at, const SiteWeather& weather, const std::vector<Obstacle>& obstacles);

/// A vertical formed face that looks toward `facing_deg` (clockwise from north), standing
/// at `at`: beam on the vertical plane, half the sky at most.
CellExposure expose_face(Point at, double facing_deg, const SiteWeather& weather,
                         const std::vector<Obstacle>& obstacles);

/// A place that no direct sun reaches, under the given share of the sky.
CellExposure expose_shaded(double sky_view, const SiteWeather& weather);

}  // namespace slabtide
