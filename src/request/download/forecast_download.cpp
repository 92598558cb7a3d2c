#include "forecast_download.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "core/utf8.h"
#include "http_retry.h"
#include "slabtide/core/units.h"
#include "slabtide/weather/site/weather_series.h"
#include "url.h"
#include "weather/readers/json_value.h"
#include "weather/readers/read_forecast.h"

namespace slabtide {
namespace {

struct ServiceRow {
  ForecastService service;
  std::string_view id;
  std::string_view name;
  std::string_view base_url;
};

constexpr std::array<ServiceRow, 2> services{
    {{ForecastService::nws, "nws", "the US National Weather Service", "https://api.weather.gov"},
     {ForecastService::open_meteo, "open-meteo", "Open-Meteo", "https://api.open-meteo.com"}}};

const ServiceRow& row_of(ForecastService service) {
  return services.at(static_cast<std::size_t>(service));
}

struct Box {
  double south_deg;
  double north_deg;
  double west_deg;
  double east_deg;
};

/// Our rough boxes: the 48 states, Alaska on both sides of 180 degrees, Hawaii, Puerto Rico and the
/// Virgin Islands, Guam and the Northern Marianas, American Samoa.
constexpr std::array<Box, 7> nws_boxes{{{24.0, 49.5, -125.0, -66.5},
                                        {51.0, 71.6, -180.0, -129.5},
                                        {51.0, 54.0, 172.0, 180.0},
                                        {18.5, 22.6, -160.7, -154.5},
                                        {17.5, 18.7, -68.0, -64.4},
                                        {13.0, 20.7, 144.4, 146.2},
                                        {-14.8, -10.8, -171.3, -168.0}}};

/// How many characters of a server's own message are passed on.
constexpr std::size_t longest_told = 300;
constexpr long status_ok = 200;
constexpr long status_not_found = 404;
constexpr long status_too_many = 429;
/// A plan needs the weather of the night after the pour.
constexpr double hours_after_start = 24.0;
/// Days to ask of Open-Meteo besides those until the pour: its day and three more. It offers
/// sixteen.
constexpr long days_beyond_pour = 4;
constexpr long min_days = 9;  ///< a week to choose from, today, and the night after
constexpr long max_days = 16;
constexpr std::string_view open_meteo_quantities =
    "temperature_2m,dew_point_2m,relative_humidity_2m,cloud_cover,wind_speed_10m,wind_gusts_10m,"
    "shortwave_radiation,precipitation,precipitation_probability,weather_code";

std::string text_of(const JsonValue& object, std::string_view key) {
  const JsonValue* const member = object.find(key);
  return member == nullptr ? "" : member->text;
}

/// The message in a body that reports a problem (RFC 9457, or Open-Meteo's `reason`); may be empty.
std::string problem_told(const std::string& body) {
  const Parsed<JsonValue> json = parse_json(body);
  if (!json.ok()) return {};
  const std::string title = text_of(*json.value, "title");
  const std::string detail = text_of(*json.value, "detail");
  if (title.empty() && detail.empty()) return text_of(*json.value, "reason");
  return fmt::format("{}{}{}", title, title.empty() || detail.empty() ? "" : ": ", detail);
}

std::string waiting_advice(const HttpReply& reply, UtcTime now) {
  const std::optional<double> wait_s = retry_after_s(reply.retry_after, now);
  if (!wait_s) return "run it again in a while";
  constexpr double seconds_per_minute = 60.0;
  constexpr double max_minutes = 120.0;
  const bool in_minutes = *wait_s <= max_minutes * seconds_per_minute;
  const double count = std::ceil(*wait_s / (in_minutes ? seconds_per_minute : seconds_per_hour));
  return fmt::format("it asks to wait: run it again in {:.0f} {}{}", count,
                     in_minutes ? "minute" : "hour", count == 1.0 ? "" : "s");
}

/// An unsuccessful status as a failure, in words.
HttpFailure refusal(const HttpReply& reply, const DownloadOrder& order, std::string_view of) {
  std::string message =
      fmt::format("{} has no {} (status {})", name_of(order.service), of, reply.status);
  if (const std::string told = problem_told(reply.body); !told.empty())
    message += ": " + printable(told, longest_told);
  if (reply.status == status_too_many || reply.status >= 500)
    return {std::move(message), waiting_advice(reply, order.now)};
  if (reply.status == status_not_found && order.service == ForecastService::nws) {
    return {std::move(message),
            "check the site's latitude and longitude; it serves the United States only, use "
            "--from open-meteo elsewhere"};
  }
  return {std::move(message), "check the site's latitude and longitude"};
}

/// The body of a successful reply.
std::variant<std::string, HttpFailure> body_of(const std::string& url, const DownloadOrder& order,
                                               const HttpGet& get, std::string_view of) {
  HttpResult result = get(url);
  if (auto* const failure = std::get_if<HttpFailure>(&result)) return std::move(*failure);
  auto& reply = std::get<HttpReply>(result);
  if (reply.status != status_ok) return refusal(reply, order, of);
  return std::move(reply.body);
}

std::string first_error(const std::vector<Diagnostic>& diagnostics) {
  const auto found = std::find_if(
      diagnostics.begin(), diagnostics.end(),
      [](const Diagnostic& diagnostic) { return diagnostic.severity == Severity::error; });
  if (found == diagnostics.end()) return "it cannot be used";
  return printable(
      found->key.empty() ? found->message : fmt::format("{}: {}", found->key, found->message),
      longest_told);
}

/// Reads the document and checks that it is good enough for a plan.
DownloadResult checked(std::string document, const DownloadOrder& order) {
  const auto unfit = [&](const std::vector<Diagnostic>& diagnostics) {
    return HttpFailure{fmt::format("what {} sent is no usable forecast: {}", name_of(order.service),
                                   first_error(diagnostics)),
                       "run it again in a while"};
  };
  Parsed<Forecast> reading = read_forecast(document, order.clock);
  if (!reading.ok()) return unfit(reading.diagnostics);
  const Parsed<WeatherSeries> series = WeatherSeries::from_forecast(*reading.value);
  if (!series.ok()) return unfit(series.diagnostics);
  return DownloadedForecast{std::move(document), std::move(*reading.value), {}};
}

DownloadResult fetch_document(const std::string& url, const DownloadOrder& order,
                              const HttpGet& get) {
  auto body = body_of(url, order, get, "forecast for this place");
  if (auto* const failure = std::get_if<HttpFailure>(&body)) return std::move(*failure);
  return checked(std::move(std::get<std::string>(body)), order);
}

/// True if an address named in a document may be followed.
bool is_trusted(const std::string& url, const DownloadOrder& order) {
  const std::optional<WebAddress> address = web_address(url);
  const std::optional<WebAddress> base = web_address(order.base_url);
  const std::optional<WebAddress> own = web_address(std::string{base_url_of(order.service)});
  return address && may_follow(order.base_url, url) &&
         ((base && address->host == base->host) || (own && address->host == own->host));
}

/// Downloads from one of the addresses in the points document.
DownloadResult follow(const JsonValue& points, std::string_view key, const DownloadOrder& order,
                      const HttpGet& get) {
  const JsonValue* const properties = points.find("properties");
  const std::string url = properties == nullptr ? "" : text_of(*properties, key);
  if (url.empty()) {
    return HttpFailure{
        fmt::format("{} does not say where the forecast for this place is", name_of(order.service)),
        "run it again in a while, or use --from open-meteo"};
  }
  if (!is_trusted(url, order)) {
    return HttpFailure{fmt::format("{} sends on to {}, which is not followed",
                                   name_of(order.service), printable(url, longest_told)),
                       "check --base-url"};
  }
  return fetch_document(url, order, get);
}

DownloadResult download_nws(const DownloadOrder& order, const HttpGet& get) {
  const std::string url =
      fmt::format("{}/points/{},{}", order.base_url, short_degrees(order.latitude_deg),
                  short_degrees(order.longitude_deg));
  const auto body = body_of(url, order, get, "forecast for this place");
  if (const auto* const failure = std::get_if<HttpFailure>(&body)) return *failure;
  const Parsed<JsonValue> points = parse_json(std::get<std::string>(body));
  if (!points.ok()) {
    return HttpFailure{fmt::format("what {} sent is damaged: {}", name_of(order.service),
                                   first_error(points.diagnostics)),
                       "check --base-url, or run it again in a while"};
  }
  DownloadResult grid = follow(*points.value, "forecastGridData", order, get);
  if (std::holds_alternative<DownloadedForecast>(grid)) return grid;
  DownloadResult hourly = follow(*points.value, "forecastHourly", order, get);
  auto* const taken = std::get_if<DownloadedForecast>(&hourly);
  if (taken == nullptr) return grid;  // report the failure of the grid
  taken->remarks.push_back(
      fmt::format("Took the hourly forecast, which gives no amounts of rain: {}.",
                  std::get<HttpFailure>(grid).message));
  return hourly;
}

/// Adds the time of fetching, as the first member, because the service gives no time of issue.
void record_fetch_time(std::string& document, UtcTime now) {
  const std::size_t brace = document.find('{');
  if (brace == std::string::npos) return;
  document.insert(brace + 1,
                  fmt::format(R"("slabtide_fetched":"{}",)", iso8601_minute(now, TimeZone{})));
}

DownloadResult download_open_meteo(const DownloadOrder& order, const HttpGet& get) {
  const long days_to_pour = (order.pour_start.date() - order.now.date()).days();
  const std::string url = fmt::format(
      "{}/v1/forecast?latitude={}&longitude={}&hourly={}&wind_speed_unit=ms&timeformat=unixtime"
      "&past_days=1&forecast_days={}",
      order.base_url, short_degrees(order.latitude_deg), short_degrees(order.longitude_deg),
      open_meteo_quantities, std::clamp(days_to_pour + days_beyond_pour, min_days, max_days));
  auto body = body_of(url, order, get, "forecast for this place");
  if (auto* const failure = std::get_if<HttpFailure>(&body)) return std::move(*failure);
  std::string document = std::move(std::get<std::string>(body));
  DownloadResult result = checked(document, order);
  if (auto* const downloaded = std::get_if<DownloadedForecast>(&result)) {
    record_fetch_time(document, order.now);
    return checked(std::move(document), order);
  }
  return result;
}

}  // namespace

std::string_view id_of(ForecastService service) { return row_of(service).id; }
std::string_view name_of(ForecastService service) { return row_of(service).name; }
std::string_view base_url_of(ForecastService service) { return row_of(service).base_url; }

std::optional<ForecastService> service_of(std::string_view id) {
  const auto* const found = std::find_if(services.begin(), services.end(),
                                         [=](const ServiceRow& row) { return row.id == id; });
  if (found == services.end()) return std::nullopt;
  return found->service;
}

bool in_nws_area(double latitude_deg, double longitude_deg) {
  return std::any_of(nws_boxes.begin(), nws_boxes.end(), [=](const Box& box) {
    return latitude_deg >= box.south_deg && latitude_deg <= box.north_deg &&
           longitude_deg >= box.west_deg && longitude_deg <= box.east_deg;
  });
}

std::string short_degrees(double degrees) {
  std::string text = fmt::format("{:.4f}", degrees);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text == "-0" ? "0" : text;
}

DownloadResult download_forecast(const DownloadOrder& order, const HttpGet& get) {
  return order.service == ForecastService::nws ? download_nws(order, get)
                                               : download_open_meteo(order, get);
}

std::optional<std::string> coverage_fault(const Forecast& forecast, UtcTime pour_start,
                                          const Clock& clock) {
  const auto moment = [&clock](UtcTime time) { return clock.date_time(time); };
  const UtcTime first = forecast.hours.front().at;
  const UtcTime last = forecast.hours.back().at;
  if (pour_start < first) {
    return fmt::format(
        "The forecast begins {}, after the pour's start on {}. Check the pour's "
        "date.",
        moment(first), moment(pour_start));
  }
  if (last < pour_start) {
    return fmt::format(
        "The forecast ends {}, before the pour's start on {}. Fetch again when the "
        "pour is closer.",
        moment(last), moment(pour_start));
  }
  if (seconds_between(pour_start, last) < hours_after_start * seconds_per_hour) {
    return fmt::format(
        "The forecast ends {}, less than a day after the pour's start. Fetch again "
        "before you plan.",
        moment(last));
  }
  return std::nullopt;
}

}  // namespace slabtide
