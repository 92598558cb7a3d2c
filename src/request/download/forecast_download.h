#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "http.h"
#include "slabtide/core/clock.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

enum class ForecastService { nws, open_meteo };

/// The name on the command line: "nws", "open-meteo".
std::string_view id_of(ForecastService service);
std::optional<ForecastService> service_of(std::string_view id);
/// The name in a sentence: "the US National Weather Service".
std::string_view name_of(ForecastService service);
/// The service's address, unless the user names another server.
std::string_view base_url_of(ForecastService service);

/// True if the US National Weather Service may have a forecast: inside a few boxes around the
/// states and islands it serves. Parts of these boxes are abroad or at sea.
bool in_nws_area(double latitude_deg, double longitude_deg);

struct DownloadOrder {
  ForecastService service = ForecastService::nws;
  std::string base_url;  ///< without a slash at the end
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  Clock clock;
  UtcTime pour_start;
  UtcTime now;
};

struct DownloadedForecast {
  std::string document;  ///< the document to keep, for read_forecast
  Forecast forecast;
  std::vector<std::string> remarks;  ///< sentences for the user
};

using DownloadResult = std::variant<DownloadedForecast, HttpFailure>;

/// Downloads the forecast of a place. The result has been read and is good enough for a plan.
///
/// - US National Weather Service: `/points/LAT,LON` gives the addresses of the forecast; its grid
///   document is used, or the hourly one if that fails. These addresses are followed only to
///   `base_url`'s server or the service's own, and never from https to http.
/// - Open-Meteo: one document, to which `slabtide_fetched` is added as its time of issue.
DownloadResult download_forecast(const DownloadOrder& order, const HttpGet& get);

/// A coordinate as the National Weather Service requires it: at most four decimals, without
/// trailing zeros.
std::string short_degrees(double degrees);

/// Why the forecast does not cover the pour and the day after, in a sentence; empty if it does.
std::optional<std::string> coverage_fault(const Forecast& forecast, UtcTime pour_start,
                                          const Clock& clock);

}  // namespace slabtide
