#include "site_air.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "weather/readers/weather_quantity.h"

namespace slabtide {

namespace {

constexpr double min_told_k = 0.05;

/// "1.1 °F (0.6 °C) cooler".
std::string difference_words(double k) {
  return fmt::format("{:.1f} °F ({:.1f} °C) {}", std::abs(fahrenheit_from_kelvin_difference(k)),
                     std::abs(k), k < 0.0 ? "cooler" : "warmer");
}

}  // namespace

Forecast at_site(Forecast forecast, const LearnedAir& learned) {
  if (std::abs(learned.air_k) < min_told_k) return forecast;
  for (ForecastHour& hour : forecast.hours) {
    if (!hour.air_c) continue;
    const Range possible = possible_si(WeatherQuantity::air);
    hour.air_c = std::clamp(*hour.air_c + learned.air_k, possible.low, possible.high);
    if (hour.dew_point_c) hour.dew_point_c = std::min(*hour.dew_point_c, *hour.air_c);
  }
  forecast.notes.push_back(
      fmt::format("air {} than forecast: {} pour{} at this site read it {} on average (mix book)",
                  difference_words(learned.air_k), learned.pours, learned.pours == 1 ? "" : "s",
                  difference_words(learned.mean_k)));
  return forecast;
}

}  // namespace slabtide
