#include "unit/weather/readers/forecast_test_support.h"

#include <fstream>
#include <iterator>
#include <stdexcept>

#include <fmt/format.h>

namespace slabtide::testing {

TimeZone central_time() {
  return TimeZone::from_posix_rule("America/Chicago", "CST6CDT,M3.2.0,M11.1.0").zone.value();
}

UtcTime utc(std::string_view text) {
  const ParsedInstant parsed = parse_instant(text).value();
  return parsed.local - parsed.offset.value();
}

std::string document(std::string_view name) {
  std::ifstream file{fmt::format("{}/tests/forecasts/{}", SLABTIDE_SOURCE_DIR, name)};
  if (!file) throw std::runtime_error{fmt::format("no document {}", name)};
  return {std::istreambuf_iterator<char>{file}, {}};
}

std::string told(const Parsed<Forecast>& reading, std::string_view text) {
  return render_all(reading.diagnostics, "", text);
}

std::string row(const ForecastHour& hour) {
  std::string line = iso8601_minute(hour.at, TimeZone{});
  const auto add = [&](std::string_view name, const std::optional<double>& value) {
    if (value) line += fmt::format(" {} {:.2f}", name, *value);
  };
  add("air", hour.air_c);
  add("dew", hour.dew_point_c);
  add("wind", hour.wind_10m_m_s);
  add("gust", hour.gust_10m_m_s);
  add("cloud", hour.cloud_fraction);
  add("sun", hour.solar_w_m2);
  add("rain", hour.rain_mm);
  add("chance", hour.rain_chance);
  if (hour.thunder) line += " thunder";
  return line;
}

std::string rows(const Forecast& forecast) {
  std::string lines;
  for (const ForecastHour& hour : forecast.hours) lines += row(hour) + "\n";
  return lines;
}

}  // namespace slabtide::testing
