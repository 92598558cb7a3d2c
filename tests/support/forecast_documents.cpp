#include "support/forecast_documents.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <iterator>
#include <numbers>
#include <string_view>

#include <fmt/format.h>

#include "slabtide/core/units.h"

namespace slabtide::test {
namespace {

namespace pt = boost::posix_time;

constexpr int offset_h = -5;

std::string local_text(UtcTime at) {
  return iso8601_minute(at + pt::hours(offset_h), TimeZone{}).substr(0, 16);
}

std::string offset_text(UtcTime at) { return local_text(at) + ":00-05:00"; }

using Column = std::function<std::string(const PlainHour&)>;

std::string table(std::string_view head, const std::vector<PlainHour>& hours, const Column& row) {
  std::string text{head};
  for (const PlainHour& hour : hours) text += row(hour) + "\n";
  return text;
}

std::string joined(const std::vector<PlainHour>& hours, const Column& item) {
  std::vector<std::string> items;
  std::transform(hours.begin(), hours.end(), std::back_inserter(items), item);
  return fmt::format("{}", fmt::join(items, ","));
}

/// The icon's code for a cloud fraction.
std::string_view sky_code(double fraction) {
  constexpr std::array<std::string_view, 5> codes{"skc", "few", "sct", "bkn", "ovc"};
  constexpr std::array<double, 5> fractions{0.0, 0.1875, 0.4375, 0.75, 1.0};
  for (std::size_t i = 0; i < fractions.size(); ++i) {
    if (fractions.at(i) == fraction) return codes.at(i);
  }
  return "no such class";
}

std::string period(const PlainHour& hour) {
  return fmt::format(
      R"({{"startTime":"{}","endTime":"{}","temperature":{},"temperatureUnit":"F",)"
      R"("probabilityOfPrecipitation":{{"unitCode":"wmoUnit:percent","value":{}}},)"
      R"("dewpoint":{{"unitCode":"wmoUnit:degC","value":{}}},"relativeHumidity":null,)"
      R"("windSpeed":"{} mph","icon":"/icons/land/day/{}?size=small","shortForecast":"{}"}})",
      offset_text(hour.at), offset_text(hour.at + pt::hours(1)),
      fahrenheit_from_celsius(hour.air_c), hour.rain_chance * 100.0, hour.dew_point_c,
      mph_from_m_s(hour.wind_m_s), sky_code(hour.cloud_fraction),
      hour.thunder ? "Thunderstorms" : "");
}

std::string layer(std::string_view name, std::string_view unit, const std::vector<PlainHour>& hours,
                  const Column& value) {
  std::string values;
  for (std::size_t i = 0; i < hours.size();) {
    std::size_t end = i + 1;
    while (end < hours.size() && value(hours[end]) == value(hours[i])) ++end;
    const std::size_t count = end - i;
    const std::string days = count / 24 == 0 ? "" : fmt::format("{}D", count / 24);
    const std::string rest = count % 24 == 0 ? "" : fmt::format("T{}H", count % 24);
    values += fmt::format(R"({}{{"validTime":"{}/P{}{}","value":{}}})", values.empty() ? "" : ",",
                          offset_text(hours[i].at), days, rest, value(hours[i]));
    i = end;
  }
  const std::string uom = unit.empty() ? "" : fmt::format(R"("uom":"{}",)", unit);
  return fmt::format(R"("{}":{{{}"values":[{}]}})", name, uom, values);
}

}  // namespace

std::vector<PlainHour> spring_hours(Date date, std::size_t count) {
  constexpr std::array<double, 5> clouds{0.0, 0.1875, 0.4375, 0.75, 1.0};
  std::vector<PlainHour> hours;
  const UtcTime midnight = UtcTime{date} - pt::hours(offset_h);
  for (std::size_t i = 0; i < count; ++i) {
    const double turn = 2.0 * std::numbers::pi * (static_cast<double>(i) - 9.0) / 24.0;
    hours.push_back({.at = midnight + pt::hours(static_cast<long>(i)),
                     .air_c = 12.0 + 7.0 * std::sin(turn),
                     .dew_point_c = 4.0 + std::floor(static_cast<double>(i) / 7.0) / 8.0,
                     .wind_m_s = 2.5 + 1.5 * std::sin(turn),
                     .cloud_fraction = clouds.at((i / 3) % clouds.size()),
                     .rain_chance = 0.05 * static_cast<double>((i / 6) % 4),
                     .thunder = i == 17 || i == 18});
  }
  return hours;
}

std::string as_csv_us(const std::vector<PlainHour>& hours) {
  constexpr std::string_view head =
      "time,air_f,dew_point_f,wind_mph,cloud_percent,rain_chance_percent,thunder\n";
  return table(head, hours, [](const PlainHour& hour) {
    return fmt::format(
        "{},{},{},{},{},{},{}", local_text(hour.at), fahrenheit_from_celsius(hour.air_c),
        fahrenheit_from_celsius(hour.dew_point_c), mph_from_m_s(hour.wind_m_s),
        hour.cloud_fraction * 100.0, hour.rain_chance * 100.0, hour.thunder ? "yes" : "no");
  });
}

std::string as_csv_si(const std::vector<PlainHour>& hours) {
  constexpr std::string_view head =
      "air_c,time,dew_point_c,wind_km_h,cloud_percent,rain_chance_percent,thunder\n";
  return table(head, hours, [](const PlainHour& hour) {
    return fmt::format("{},{},{},{},{},{},{}", hour.air_c, offset_text(hour.at), hour.dew_point_c,
                       km_h_from_m_s(hour.wind_m_s), hour.cloud_fraction * 100.0,
                       hour.rain_chance * 100.0, hour.thunder ? "yes" : "no");
  });
}

std::string as_nws_hourly(const std::vector<PlainHour>& hours) {
  return fmt::format(R"({{"type":"Feature","properties":{{"periods":[{}]}}}})",
                     joined(hours, period));
}

std::string as_nws_grid(const std::vector<PlainHour>& hours) {
  const auto number = [](double PlainHour::*member, double factor) -> Column {
    return [=](const PlainHour& hour) { return fmt::format("{}", hour.*member * factor); };
  };
  const auto weather = [](const PlainHour& hour) {
    return fmt::format(R"([{{"weather":{}}}])", hour.thunder ? "\"thunderstorms\"" : "null");
  };
  const std::vector<std::string> layers{
      layer("temperature", "wmoUnit:degC", hours, number(&PlainHour::air_c, 1.0)),
      layer("dewpoint", "wmoUnit:degC", hours, number(&PlainHour::dew_point_c, 1.0)),
      layer("windSpeed", "wmoUnit:km_h-1", hours, number(&PlainHour::wind_m_s, 3.6)),
      layer("skyCover", "wmoUnit:percent", hours, number(&PlainHour::cloud_fraction, 100.0)),
      layer("probabilityOfPrecipitation", "wmoUnit:percent", hours,
            number(&PlainHour::rain_chance, 100.0)),
      layer("weather", "", hours, weather)};
  return fmt::format(R"({{"type":"Feature","properties":{{"gridX":"62",{}}}}})",
                     fmt::join(layers, ","));
}

std::string as_open_meteo(const std::vector<PlainHour>& hours) {
  const auto list = [&](std::string_view name, const Column& item) {
    return fmt::format(R"("{}":[{}])", name, joined(hours, item));
  };
  const auto figure = [](double value) { return fmt::format("{}", value); };
  // The chance is for the hour before, so that of the last hour cannot be given.
  std::vector<std::string> chances{"null"};
  for (std::size_t i = 0; i + 1 < hours.size(); ++i)
    chances.push_back(figure(hours[i].rain_chance * 100.0));
  const std::vector<std::string> lists{
      list("time", [](const PlainHour& h) { return fmt::format("\"{}\"", local_text(h.at)); }),
      list("temperature_2m", [&](const PlainHour& h) { return figure(h.air_c); }),
      list("dew_point_2m", [&](const PlainHour& h) { return figure(h.dew_point_c); }),
      list("wind_speed_10m", [&](const PlainHour& h) { return figure(km_h_from_m_s(h.wind_m_s)); }),
      list("cloud_cover", [&](const PlainHour& h) { return figure(h.cloud_fraction * 100.0); }),
      list("weather_code", [](const PlainHour& h) { return h.thunder ? "95" : "1"; }),
      fmt::format(R"("precipitation_probability":[{}])", fmt::join(chances, ","))};
  return fmt::format(
      R"({{"utc_offset_seconds":{},"hourly_units":{{"time":"iso8601","temperature_2m":"°C",)"
      R"("dew_point_2m":"°C","wind_speed_10m":"km/h","cloud_cover":"%",)"
      R"("precipitation_probability":"%"}},"hourly":{{{}}}}})",
      offset_h * 3600, fmt::join(lists, ","));
}

}  // namespace slabtide::test
