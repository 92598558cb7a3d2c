#include "open_meteo.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "findings.h"
#include "forecast_draft.h"
#include "forecast_time.h"
#include "json_fields.h"
#include "slabtide/core/units.h"

namespace slabtide {
namespace {

using Kind = JsonValue::Kind;
using enum WeatherQuantity;

constexpr double largest_offset_s = 18.0 * seconds_per_hour;
/// Weather codes of the World Meteorological Organization (table 4677): 95 to 99 is thunder.
constexpr double first_thunder_code = 95.0;

struct QuantityNames {
  WeatherQuantity quantity;
  std::string_view present;
  std::string_view older;
};

constexpr std::array<QuantityNames, weather_quantity_count> quantity_names{
    {{air, "temperature_2m", "temperature_2m"},
     {dew_point, "dew_point_2m", "dewpoint_2m"},
     {humidity, "relative_humidity_2m", "relativehumidity_2m"},
     {cloud, "cloud_cover", "cloudcover"},
     {wind, "wind_speed_10m", "windspeed_10m"},
     {gust, "wind_gusts_10m", "windgusts_10m"},
     {solar, "shortwave_radiation", "shortwave_radiation"},
     {rain, "precipitation", "precipitation"},
     {rain_chance, "precipitation_probability", "precipitation_probability"}}};

struct HourlyUnit {
  std::string_view name;
  WeatherUnit unit;
};

constexpr std::array<HourlyUnit, 12> unit_names{{{"°C", WeatherUnit::celsius},
                                                 {"°F", WeatherUnit::fahrenheit},
                                                 {"%", WeatherUnit::percent},
                                                 {"km/h", WeatherUnit::km_h},
                                                 {"m/s", WeatherUnit::m_s},
                                                 {"mp/h", WeatherUnit::mph},
                                                 {"mph", WeatherUnit::mph},
                                                 {"kn", WeatherUnit::knots},
                                                 {"W/m²", WeatherUnit::w_m2},
                                                 {"W/m2", WeatherUnit::w_m2},
                                                 {"mm", WeatherUnit::mm},
                                                 {"inch", WeatherUnit::inch}}};

std::string hourly_path(std::string_view name) { return joined_path("hourly", name); }

class HourlyReader {
 public:
  HourlyReader(const JsonValue& document, const JsonValue& hourly, Findings& findings)
      : document_(document), hourly_(hourly), findings_(findings) {}

  std::vector<DraftHour> read() {
    read_times();
    units_ = needed_member_of(document_, "hourly_units", Kind::object, "", findings_);
    if (findings_.has_error()) return {};
    for (const QuantityNames& names : quantity_names) read_quantity(names);
    read_thunder();
    check_contradictions();
    move_to_the_hour_before(rain);
    move_to_the_hour_before(rain_chance);
    return std::move(hours_);
  }

 private:
  void error(const JsonValue& where, std::string key, std::string message) {
    findings_.error(where.where, std::move(key), std::move(message));
  }

  void read_times() {
    times_ = needed_member_of(hourly_, "time", Kind::array, "hourly", findings_);
    if (times_ == nullptr) return;
    const double offset_s = read_offset();
    for (std::size_t i = 0; i < times_->items.size() && !findings_.full(); ++i)
      read_time(times_->items[i], indexed_path("hourly.time", i), offset_s);
  }

  /// The UTC offset, which is required if the times are local.
  double read_offset() {
    const bool local = !times_->items.empty() && times_->items.front().is(Kind::text);
    const JsonValue* const offset =
        local ? needed_member_of(document_, "utc_offset_seconds", Kind::number, "", findings_)
              : nullptr;
    if (offset == nullptr) return 0.0;
    if (std::abs(offset->number) <= largest_offset_s) return offset->number;
    error(*offset, "utc_offset_seconds", fmt::format("{:g} is no offset", offset->number));
    return 0.0;
  }

  void read_time(const JsonValue& value, std::string path, double offset_s) {
    const std::optional<UtcTime> at = instant_of(value, path, offset_s);
    if (!at) return;
    if (!hours_.empty() && hours_.back().at >= *at) {
      error(value, std::move(path),
            hours_.back().at == *at ? "the same time as the hour before"
                                    : "earlier than the hour before");
      return;
    }
    hours_.emplace_back();
    hours_.back().at = *at;
  }

  std::optional<UtcTime> instant_of(const JsonValue& value, const std::string& path,
                                    double offset_s) {
    if (value.is(Kind::number)) {
      if (const auto at = instant_from_unix(value.number)) return at;
      error(value, path, fmt::format("{:g} is no time of a forecast", value.number));
    } else if (value.is(Kind::text)) {
      const auto at = instant_with_offset(value.text + "Z");
      if (at) return after_seconds(*at, -offset_s);
      error(value, path,
            fmt::format("{} is not a local time such as 2026-05-14T08:00", in_quotes(value.text)));
    } else {
      error(value, path, fmt::format("got {}, expected a time", kind_name(value.kind)));
    }
    return std::nullopt;
  }

  /// The list of a quantity under any of its names; it must be as long as the list of times.
  const JsonValue* list_of(std::string_view name) {
    const JsonValue* const list = member_of(hourly_, name, Kind::array, "hourly", findings_);
    if (list == nullptr || list->items.size() == times_->items.size()) return list;
    error(*list, hourly_path(name),
          fmt::format("{} values for {} times", list->items.size(), times_->items.size()));
    return nullptr;
  }

  std::optional<WeatherUnit> unit_of(std::string_view name, WeatherQuantity quantity) {
    const JsonValue* const text =
        needed_member_of(*units_, name, Kind::text, "hourly_units", findings_);
    if (text == nullptr) return std::nullopt;
    const auto* const found =
        std::find_if(unit_names.begin(), unit_names.end(),
                     [&](const HourlyUnit& candidate) { return candidate.name == text->text; });
    if (found != unit_names.end() && measures(found->unit, quantity)) return found->unit;
    error(
        *text, joined_path("hourly_units", name),
        fmt::format("got {}, no unit of {} known here", in_quotes(text->text), name_of(quantity)));
    return std::nullopt;
  }

  void read_quantity(const QuantityNames& names) {
    const bool is_older = hourly_.find(names.present) == nullptr;
    const std::string_view name = is_older ? names.older : names.present;
    const JsonValue* const list = list_of(name);
    if (list == nullptr) return;
    const std::optional<WeatherUnit> unit = unit_of(name, names.quantity);
    if (!unit) return;
    for (std::size_t i = 0; i < hours_.size() && !findings_.full(); ++i) {
      read_value(list->items[i], indexed_path(hourly_path(name), i), names.quantity, *unit,
                 hours_[i]);
    }
  }

  void read_value(const JsonValue& value, std::string path, WeatherQuantity quantity,
                  WeatherUnit unit, DraftHour& hour) {
    if (value.is(Kind::null)) return;
    if (!value.is(Kind::number)) {
      error(value, std::move(path),
            fmt::format("got {}, expected a number", kind_name(value.kind)));
    } else if (auto fault = put(hour, quantity, value.number, unit)) {
      error(value, std::move(path), std::move(*fault));
    }
  }

  void read_thunder() {
    const JsonValue* list = list_of("weather_code");
    if (list == nullptr) list = list_of("weathercode");
    if (list == nullptr) return;
    for (std::size_t i = 0; i < hours_.size(); ++i)
      hours_[i].thunder = list->items[i].number >= first_thunder_code;
  }

  void check_contradictions() {
    for (std::size_t i = 0; i < hours_.size() && !findings_.full(); ++i) {
      if (auto fault = contradiction(hours_[i])) {
        error(times_->items[i], indexed_path("hourly.time", i), std::move(*fault));
      }
    }
  }

  void move_to_the_hour_before(WeatherQuantity quantity) {
    for (std::size_t i = 0; i < hours_.size(); ++i) {
      const bool has_next = i + 1 < hours_.size() &&
                            seconds_between(hours_[i].at, hours_[i + 1].at) == seconds_per_hour;
      hours_[i][quantity] = has_next ? hours_[i + 1][quantity] : std::nullopt;
    }
  }

  const JsonValue& document_;
  const JsonValue& hourly_;
  Findings& findings_;
  const JsonValue* times_ = nullptr;
  const JsonValue* units_ = nullptr;
  std::vector<DraftHour> hours_;  ///< one for each of times_
};

/// The reason, if the document is an error message instead of a forecast; else empty.
std::optional<std::string> refusal(const JsonValue& document) {
  const JsonValue* const failed = document.find("error");
  if (failed == nullptr || !failed->boolean) return std::nullopt;
  const JsonValue* const reason = document.find("reason");
  return reason == nullptr ? "no reason given" : reason->text;
}

}  // namespace

bool is_open_meteo(const JsonValue& document) {
  return document.find("hourly") != nullptr || document.find("utc_offset_seconds") != nullptr ||
         refusal(document).has_value();
}

Parsed<Forecast> read_open_meteo(const JsonValue& document, const Clock& clock) {
  Findings findings;
  if (const auto reason = refusal(document)) {
    findings.error(document.where, "", fmt::format("the service gave no forecast: {}", *reason));
    return {std::nullopt, findings.take()};
  }
  const JsonValue* const hourly = needed_member_of(document, "hourly", Kind::object, "", findings);
  if (hourly == nullptr) return {std::nullopt, findings.take()};
  DraftForecast draft{.source = "Open-Meteo, hourly forecast",
                      .issued = instant_member_of(document, "slabtide_fetched", "", findings),
                      .hours = HourlyReader{document, *hourly, findings}.read()};
  return conclude(std::move(draft), clock, std::move(findings), hourly->where);
}

}  // namespace slabtide
