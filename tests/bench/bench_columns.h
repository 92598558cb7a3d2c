#pragma once

#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include "slab/mix/mix_model.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

// Columns under artificial weather, so that only the solver is measured.

namespace slabtide::bench {

inline constexpr double day_s = 86400.0;
inline constexpr double step_s = 300.0;

/// A daily wave around `mean`, lowest at midnight.
inline double daily(double mean, double swing, double time_s) {
  return mean - swing * std::cos(2.0 * std::numbers::pi * time_s / day_s);
}

/// Approximately two clear spring days.
inline SiteWeather two_days(double hours = 50.0) {
  SiteWeather weather;
  weather.grid.start = UtcTime(Date(2026, 5, 14));
  weather.grid.step_s = step_s;
  weather.grid.count = static_cast<std::size_t>(hours * 3600.0 / step_s) + 1;
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double time_s = step_s * static_cast<double>(i);
    weather.air_c.push_back(daily(14.0, 7.0, time_s));
    weather.dew_point_c.push_back(6.0);
    weather.vapour_pressure_pa.push_back(935.0);
    weather.wind_slab_m_s.push_back(1.5);
    weather.cloud_fraction.push_back(0.2);
    weather.sky_emissivity.push_back(0.80);
    weather.sun_elevation_deg.push_back(daily(0.0, 60.0, time_s));
    weather.sun_azimuth_deg.push_back(180.0);
    weather.rain_mm_h.push_back(0.0);
    weather.rain_chance.push_back(0.0);
    weather.thunder.push_back(0);
    weather.beam_horizontal_w_m2.push_back(std::fmax(0.0, daily(0.0, 700.0, time_s)));
    weather.diffuse_w_m2.push_back(std::fmax(0.0, daily(0.0, 90.0, time_s)));
  }
  return weather;
}

/// From full sun on the first column to full shade on the last.
inline std::vector<CellExposure> exposures(const SiteWeather& weather, std::size_t count) {
  std::vector<CellExposure> result(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double sunlit = 1.0 - static_cast<double>(i) / static_cast<double>(count);
    result[i].sunlit_fraction.assign(weather.grid.count, sunlit);
    for (std::size_t t = 0; t < weather.grid.count; ++t) {
      result[i].shortwave_w_m2.push_back(sunlit * weather.beam_horizontal_w_m2[t] +
                                         weather.diffuse_w_m2[t]);
    }
  }
  return result;
}

inline ColumnCase placed_at_eight(const MixModel& mix, const CellExposure& exposure) {
  ColumnCase column;
  column.batched_s = 7.4 * 3600.0;
  column.placed_s = 8.0 * 3600.0;
  column.concrete_c = 18.0;
  column.ground_c = 13.0;
  column.thickness_m = 0.1;
  column.below = {{.thickness_m = 0.1, .material = {1.4, 1.9e6}}};
  column.mix = &mix;
  column.exposure = &exposure;
  return column;
}

inline MixModel usual_mix() {
  const Mix mix;
  return mix_model(mix, mix.admixtures);
}

}  // namespace slabtide::bench
