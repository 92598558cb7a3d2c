#pragma once

#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <span>
#include <stdexcept>
#include <vector>

#include "slab/material/materials.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/slab/stress/stress.h"
#include "slabtide/weather/air/moist_air.h"
#include "slabtide/weather/site/site_weather.h"

// Weather and columns for the tests of slab, made here so that they need no higher module.

namespace slabtide::fixtures {

struct SteadyAir {
  double air_c = 20.0;
  double humidity_fraction = 0.5;
  double wind_slab_m_s = 1.0;
  double sky_emissivity = 1.0;
  double hours = 24.0;
};

/// The same air at every instant, without sun and rain.
inline SiteWeather steady_weather(const SteadyAir& air) {
  SiteWeather weather;
  weather.grid.count = static_cast<std::size_t>(std::lround(air.hours * 12.0)) + 1;
  const std::size_t n = weather.grid.count;
  const double vapour_pa = air.humidity_fraction * saturation_pressure_pa(air.air_c);
  weather.air_c.assign(n, air.air_c);
  weather.dew_point_c.assign(n, dew_point_from_humidity_c(air.air_c, air.humidity_fraction));
  weather.vapour_pressure_pa.assign(n, vapour_pa);
  weather.wind_slab_m_s.assign(n, air.wind_slab_m_s);
  weather.sky_emissivity.assign(n, air.sky_emissivity);
  return weather;
}

struct Day {
  double high_c = 25.0;
  double low_c = 10.0;
  double dew_point_c = 8.0;
  double wind_slab_m_s = 1.5;
  double sky_emissivity = 0.80;
  double start_hour = 7.0;  ///< local hour at the grid's start
  double hours = 24.0;
};

/// A clear day: the air temperature is a wave that peaks at 15 h.
inline SiteWeather day_weather(const Day& day) {
  SiteWeather weather = steady_weather({.air_c = 20.0,
                                        .humidity_fraction = 0.5,
                                        .wind_slab_m_s = day.wind_slab_m_s,
                                        .sky_emissivity = day.sky_emissivity,
                                        .hours = day.hours});
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double hour = day.start_hour + static_cast<double>(i) * weather.grid.step_s / 3600.0;
    const double wave = std::cos(2.0 * std::numbers::pi * (hour - 15.0) / 24.0);
    weather.air_c[i] = 0.5 * (day.high_c + day.low_c + (day.high_c - day.low_c) * wave);
    weather.dew_point_c[i] = std::min(day.dew_point_c, weather.air_c[i]);
    weather.vapour_pressure_pa[i] = vapour_pressure_pa(weather.dew_point_c[i]);
  }
  return weather;
}

inline CellExposure in_the_shade(const SiteWeather& weather, double sky_view) {
  CellExposure exposure;
  exposure.sky_view = sky_view;
  exposure.shortwave_w_m2.assign(weather.grid.count, 0.0);
  exposure.sunlit_fraction.assign(weather.grid.count, 0.0);
  return exposure;
}

/// Sun from 6 to 18 h, as a half wave with the given maximum at noon.
inline CellExposure in_the_sun(const SiteWeather& weather, double start_hour, double noon_w_m2) {
  CellExposure exposure = in_the_shade(weather, 1.0);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double hour =
        std::fmod(start_hour + static_cast<double>(i) * weather.grid.step_s / 3600.0, 24.0);
    const double height = std::sin(std::numbers::pi * (hour - 6.0) / 12.0);
    exposure.shortwave_w_m2[i] = noon_w_m2 * std::max(0.0, height);
    exposure.sunlit_fraction[i] = height > 0.0 ? 1.0 : 0.0;
  }
  return exposure;
}

/// A slab on 0.1 m of gravel, batched at the grid's start and placed 35 min later.
inline ColumnCase slab_on_gravel(const MixModel& mix, const CellExposure& exposure,
                                 double concrete_c, double thickness_m = 0.1) {
  ColumnCase column;
  column.placed_s = 35.0 * 60.0;
  column.concrete_c = concrete_c;
  column.ground_c = concrete_c;
  column.thickness_m = thickness_m;
  column.below = {{0.1, base_material(BaseKind::gravel)}};
  column.bleed_up_fraction = bleed_up_fraction(Base{});
  column.mix = &mix;
  column.exposure = &exposure;
  return column;
}

/// The first time at which a rising series reaches `level`, interpolated in the logarithm of the
/// values (log resistance is almost linear); empty if it does not.
inline std::optional<double> first_reached(std::span<const double> time_s,
                                           std::span<const double> values, double level) {
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!(values[i] >= level)) continue;
    if (i == 0) return time_s[0];
    const bool rises = values[i - 1] > 0.0;
    const double fraction =
        rises ? std::log(level / values[i - 1]) / std::log(values[i] / values[i - 1])
              : (level - values[i - 1]) / (values[i] - values[i - 1]);
    return time_s[i - 1] + fraction * (time_s[i] - time_s[i - 1]);
  }
  return std::nullopt;
}

/// The same if it must happen. Error: std::runtime_error if it does not.
inline double when_reached(const ColumnHistory& history, const std::vector<double>& values,
                           double level) {
  const std::optional<double> at_s = first_reached(history.time_s, values, level);
  if (!at_s) throw std::runtime_error("the history ends before the level is reached");
  return *at_s;
}

/// A slab 4 in thick without cuts over 12 m, not tied and tied.
inline constexpr StressCase long_free{.uncut_length_m = 12.0, .thickness_m = 0.1};
inline constexpr StressCase long_tied{.uncut_length_m = 12.0, .thickness_m = 0.1, .tied = true};

}  // namespace slabtide::fixtures
