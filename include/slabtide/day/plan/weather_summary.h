#pragma once

#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// The pour day's weather in figures.
struct WeatherSummary {
  double high_c = 0.0;
  double low_c = 0.0;
  double mean_wind_10m_m_s = 0.0;
  double daylight_cloud_fraction = 0.0;
};

/// Over the first 24 hours of the run's weather, or all of it if that is less.
WeatherSummary summarise_weather(const PourRun& run);

}  // namespace slabtide
