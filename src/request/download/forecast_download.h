#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "http.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

enum class ForecastService { nws, open_meteo };

/// As the user names it: "nws", "open-meteo".
std::string_view id_of(ForecastService service);
std::optional<ForecastService> service_of(std::string_view id);
/// In a sentence: "the US National Weather Service".
std::string_view name_of(ForecastService service);
/// Where the service is found when the user names no other server.
std::string_view base_url_of(ForecastService service);

/// True where the US National Weather Service may have a forecast: within a few boxes about the
/// states and islands it serves. Some of what they hold is abroad or at sea.
bool in_nws_area(double latitude_deg, double longitude_deg);

struct DownloadOrder {
  ForecastService service = ForecastService::nws;
  std::string base_url;  ///< without a slash at its end
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  TimeZone zone;
  UtcTime pour_start;
  UtcTime now;
};

struct DownloadedForecast {
  std::string document;  ///< what to keep; read_forecast takes it
  Forecast forecast;
  std::vector<std::string> remarks;  ///< sentences for the user
};

using DownloadResult = std::variant<DownloadedForecast, HttpFailure>;

/// Gets the forecast of a place. What comes has been read and is fit for a plan.
///
/// - US National Weather Service: `/points/LAT,LON` tells where the forecast is; its grid
///   document is taken, or the hourly one where that fails. The addresses it names are followed
///   only to `base_url`'s server or the service's own, and never from https to http.
/// - Open-Meteo: one document, which gets `slabtide_fetched` as its time of issue.
DownloadResult download_forecast(const DownloadOrder& order, const HttpGet& get);

/// A coordinate as the National Weather Service wants it: at most four decimals, no zeros at the
/// end.
std::string short_degrees(double degrees);

/// Why the forecast does not reach over the pour and the day after, in a sentence; empty where
/// it does.
std::optional<std::string> coverage_fault(const Forecast& forecast, UtcTime pour_start,
                                          const TimeZone& zone);

}  // namespace slabtide
