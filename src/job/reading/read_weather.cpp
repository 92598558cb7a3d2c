#include "read_weather.h"
#include "job/model/limits.h"
#include "job/model/usual_weather.h"

#include <optional>
#include <string>
#include <string_view>

namespace slabtide {

namespace {

double read_cloud_part(TableReader& table, std::string_view part) {
  return table.quantity(part, fraction_quantity, limits::fractions, Presence::required)
      .value_or(0.0);
}

CloudShares read_cloud(TableReader& table) {
  CloudShares cloud;
  if (table.holds_table("cloud")) {
    table.in_table("cloud", [&](TableReader& parts) {
      cloud.night = read_cloud_part(parts, "night");
      cloud.morning = read_cloud_part(parts, "morning");
      cloud.afternoon = read_cloud_part(parts, "afternoon");
      cloud.evening = read_cloud_part(parts, "evening");
    });
    return cloud;
  }
  const double all_day =
      table.quantity("cloud", fraction_quantity, limits::fractions).value_or(0.0);
  return {all_day, all_day, all_day, all_day};
}

std::optional<double> read_air(TableReader& table, std::string_view key,
                               Presence presence = Presence::optional) {
  return table.quantity(key, temperature_quantity, limits::typed_air_c, presence);
}

void check_order(TableReader& table, std::string_view lower, std::optional<double> lower_c,
                 std::string_view upper, std::optional<double> upper_c) {
  if (!lower_c || !upper_c || *lower_c <= *upper_c) return;
  table.error(lower, std::string("is above the ") + std::string(upper),
              "check both; the low is the pour morning's, the high that of the day",
              table.where(upper));
}

TypedWeather read_typed_day(TableReader& table) {
  TypedWeather day;
  const auto high = read_air(table, "high", Presence::required);
  const auto low = read_air(table, "low", Presence::required);
  set(day.high_c, high);
  set(day.low_c, low);
  day.next_high_c = read_air(table, "next_high");
  day.next_low_c = read_air(table, "next_low");
  day.dew_point_c = read_air(table, "dew_point");
  day.humidity_at_high = table.quantity("humidity", fraction_quantity, limits::humidities);
  table.refuse_both("dew_point", "humidity");
  const auto wind = table.quantity("wind", wind_quantity, limits::typed_winds_m_s);
  day.wind_10m_m_s = wind.value_or(usual_wind_10m_m_s);
  day.wind_is_assumed = !table.has("wind");
  day.cloud = read_cloud(table);
  day.cloud_is_assumed = !table.has("cloud");
  check_order(table, "low", low, "high", high);
  check_order(table, "dew_point", day.dew_point_c, "high", high);
  check_order(table, "next_low", day.next_low_c, "high", high);
  check_order(table, "next_low", day.next_low_c, "next_high", day.next_high_c);
  if (low && day.next_high_c && !day.next_low_c && *low > *day.next_high_c) {
    table.error("next_high",
                "is under the low, which is also the next night's where that is not given",
                "say `next_low` too");
  }
  return day;
}

/// A forecast file covers the whole day, so typed figures beside it are refused.
void refuse_typed_day(TableReader& table) {
  for (const auto* const key : {"high", "low", "next_high", "next_low", "dew_point"}) {
    read_air(table, key);
  }
  table.quantity("wind", wind_quantity, limits::typed_winds_m_s);
  table.quantity("humidity", fraction_quantity, limits::humidities);
  table.entry("cloud");
  for (const auto* const key :
       {"high", "low", "next_high", "next_low", "dew_point", "humidity", "wind", "cloud"}) {
    if (table.refuse_both("forecast", key,
                          "the forecast covers the whole day: leave the rest out")) {
      return;
    }
  }
}

}  // namespace

WeatherChoice read_weather(TableReader& table) {
  if (const auto path = table.text("forecast")) {
    refuse_typed_day(table);
    return ForecastFile{*path, table.where("forecast")};
  }
  return read_typed_day(table);
}

}  // namespace slabtide
