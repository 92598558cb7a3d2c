#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/air/moist_air.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

/// Evenly spaced instants.
struct TimeGrid {
  UtcTime start;
  double step_s = 300.0;
  std::size_t count = 0;

  double end_s() const { return count == 0 ? 0.0 : step_s * static_cast<double>(count - 1); }

  /// The last instant at or before `at_s` seconds from the start; the first instant for times
  /// before the start (and for NaN), the last for times past the end. The grid must not be empty.
  std::size_t index_at(double at_s) const;

  friend bool operator==(const TimeGrid&, const TimeGrid&) = default;
};

/// The weather that the whole site shares. Every vector has grid.count entries, one per instant of
/// the grid.
struct SiteWeather {
  TimeGrid grid;
  double air_pressure_pa = sea_level_pressure_pa;  ///< at the site's elevation
  double wind_ratio = 0.45;                        ///< wind at the slab over the wind at 10 m
  double sun_distance_au = 1.0;  ///< at the grid's start; it changes by at most 0.0003 in a day
  std::vector<double> air_c;
  std::vector<double> dew_point_c;
  std::vector<double> vapour_pressure_pa;
  std::vector<double> wind_slab_m_s;
  std::vector<double> cloud_fraction;
  std::vector<double> sky_emissivity;
  std::vector<double> beam_horizontal_w_m2;  ///< direct sun on a horizontal surface
  std::vector<double> diffuse_w_m2;          ///< sky light on an open horizontal surface
  std::vector<double> sun_elevation_deg;     ///< true, without refraction
  std::vector<double> sun_azimuth_deg;       ///< clockwise from north
  std::vector<double> rain_mm_h;
  std::vector<double> rain_chance;
  std::vector<char> thunder;  ///< 1 if it is forecast

  friend bool operator==(const SiteWeather&, const SiteWeather&) = default;
};

/// The series brought to the site: sun, sky, irradiance (the forecast's own where it has it,
/// else the clear sky through its clouds) and wind at the slab. Before its first instant the series
/// is taken to have gone as on its first day.
/// Error: std::invalid_argument for a grid without start or step, or a site off the globe.
SiteWeather site_weather(const Site& site, const WeatherSeries& series, const TimeGrid& grid);

}  // namespace slabtide
