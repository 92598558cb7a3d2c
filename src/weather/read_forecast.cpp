#include "slabtide/weather/read_forecast.h"

#include <algorithm>
#include <array>

#include "findings.h"
#include "slabtide/weather/forecast_csv.h"

namespace slabtide {
namespace {

struct Format {
  bool (*recognised)(std::string_view text);
  Reading<Forecast> (*read)(std::string_view text, const TimeZone& zone);
};

/// The one place where a format is added. The first that recognises the text reads it.
constexpr std::array<Format, 1> formats{{
    {looks_like_forecast_csv, read_forecast_csv},
}};

constexpr std::string_view blanks = " \t\r\n";

Reading<Forecast> refused(std::string_view message) {
  Findings findings;
  findings.error({1, 1}, "", std::string{message},
                 "run 'slabtide fetch' for tomorrow's forecast, or type an hourly table: "
                 "time,air_f,dew_point_f,wind_mph,cloud_percent");
  return {std::nullopt, findings.take()};
}

/// Empty where the text may be a forecast.
std::string_view plainly_wrong(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return "the forecast is empty";
  if (text.find('\0') != std::string_view::npos) return "the forecast is not a text file";
  if (text[first] == '<') return "this is a web page, not a forecast";
  return {};
}

}  // namespace

Reading<Forecast> read_forecast(std::string_view text, const TimeZone& zone) {
  if (const auto fault = plainly_wrong(text); !fault.empty()) return refused(fault);
  const auto* const format =
      std::find_if(formats.begin(), formats.end(),
                   [&](const Format& candidate) { return candidate.recognised(text); });
  if (format == formats.end()) return refused("not a forecast of a known kind");
  return format->read(text, zone);
}

}  // namespace slabtide
