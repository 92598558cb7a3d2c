#include "validate_forecast.h"

#include "forecast_time.h"
#include "job/checks/field_checks.h"
#include "weather_quantity.h"

namespace slabtide {

namespace {

void check_hour(const FieldPath& path, const ForecastHour& hour) {
  path.at("at").require(is_forecast_time(hour.at), "is no time of a forecast");
  const auto check = [&](std::string_view field, const std::optional<double>& value,
                         WeatherQuantity quantity) {
    path.at(field).in_range(value, possible_si(quantity));
  };
  check("air_c", hour.air_c, WeatherQuantity::air);
  // A typed day's dew point may be as high as its air.
  check("dew_point_c", hour.dew_point_c, WeatherQuantity::air);
  check("wind_10m_m_s", hour.wind_10m_m_s, WeatherQuantity::wind);
  check("gust_10m_m_s", hour.gust_10m_m_s, WeatherQuantity::gust);
  check("cloud_share", hour.cloud_fraction, WeatherQuantity::cloud);
  check("solar_w_m2", hour.solar_w_m2, WeatherQuantity::solar);
  check("rain_mm", hour.rain_mm, WeatherQuantity::rain);
  check("rain_chance", hour.rain_chance, WeatherQuantity::rain_chance);
}

}  // namespace

void validate(const Forecast& forecast) {
  const FieldPath path;
  path.at("source").is_text(forecast.source);
  path.at("issued").require(!forecast.issued || is_forecast_time(*forecast.issued),
                            "is no time of a forecast");
  for (const std::string& note : forecast.notes) path.at("notes").is_text(note);
  for (std::size_t i = 0; i < forecast.hours.size(); ++i) {
    const FieldPath hour = path.at("hours", i);
    check_hour(hour, forecast.hours[i]);
    hour.at("at").require(i == 0 || forecast.hours[i - 1].at < forecast.hours[i].at,
                          "does not come after the row before");
  }
}

}  // namespace slabtide
