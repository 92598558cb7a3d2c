#include "nws_hourly.h"

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
#include "nws_values.h"

namespace slabtide {
namespace {

using Kind = JsonValue::Kind;
using enum WeatherQuantity;

constexpr std::string_view periods_path = "properties.periods";
constexpr double longest_period_s = 3.0 * 3600.0;

/// Reads one period into one hour.
class PeriodReader {
 public:
  PeriodReader(const JsonValue& period, std::size_t index, Findings& findings)
      : period_(period), path_(indexed_path(periods_path, index)), findings_(findings) {}

  std::optional<DraftHour> read() {
    const std::optional<UtcTime> start = read_times();
    if (!start) return std::nullopt;
    hour_.at = *start;
    read_temperature();
    read_measured("dewpoint", dew_point);
    read_measured("relativeHumidity", humidity);
    read_measured("probabilityOfPrecipitation", rain_chance);
    read_wind("windSpeed", wind);
    read_wind("windGust", gust);
    read_sky();
    if (const auto fault = contradiction(hour_)) findings_.error(period_.where, path_, *fault);
    return hour_;
  }

 private:
  const JsonValue* member(std::string_view key, Kind wanted) {
    return member_of(period_, key, wanted, path_, findings_);
  }
  void error(const JsonValue& where, std::string_view key, std::string message,
             std::string next_step = {}) {
    findings_.error(where.where, joined_path(path_, key), std::move(message), std::move(next_step));
  }

  std::optional<UtcTime> instant(std::string_view key) {
    return instant_member_of(period_, key, path_, findings_);
  }

  /// The period's start; its end is only checked.
  std::optional<UtcTime> read_times() {
    if (needed_member_of(period_, "startTime", Kind::text, path_, findings_) == nullptr)
      return std::nullopt;
    const std::optional<UtcTime> start = instant("startTime");
    const std::optional<UtcTime> end = instant("endTime");
    if (start && end) check_length(*start, *end, *period_.find("endTime"));
    return start;
  }

  void check_length(UtcTime start, UtcTime end, const JsonValue& where) {
    const double length_s = seconds_between(start, end);
    if (length_s > longest_period_s) {
      error(where, "endTime", "the period is longer than three hours",
            "this is the forecast by half days: fetch the hourly one");
    } else if (!(length_s > 0.0)) {
      error(where, "endTime", "the period ends before it starts");
    }
  }

  void store(const JsonValue& where, std::string_view key, WeatherQuantity quantity,
             Measured measured) {
    if (!measures(measured.unit, quantity)) {
      error(where, key, fmt::format("{} in {}", name_of(quantity), symbol_of(measured.unit)));
    } else if (const auto fault = put(hour_, quantity, measured.value, measured.unit)) {
      error(where, key, *fault);
    }
  }

  void read_temperature() {
    const JsonValue* const value = period_.find("temperature");
    if (value == nullptr || value->is(Kind::null)) return;
    if (value->is(Kind::object)) return read_measured("temperature", air);
    if (member("temperature", Kind::number) == nullptr) return;
    const JsonValue* const unit =
        needed_member_of(period_, "temperatureUnit", Kind::text, path_, findings_);
    if (unit == nullptr) return;
    if (unit->text == "F" || unit->text == "C") {
      store(*value, "temperature", air,
            {value->number, unit->text == "F" ? WeatherUnit::fahrenheit : WeatherUnit::celsius});
    } else {
      error(*unit, "temperatureUnit",
            fmt::format("got {}, expected F or C", in_quotes(unit->text)));
    }
  }

  /// The value, or the middle between minimum and maximum; empty if both are null.
  std::optional<double> figure_of(const JsonValue& measured, const std::string& path) {
    const auto number = [&](std::string_view key) {
      return member_of(measured, key, Kind::number, path, findings_);
    };
    if (const JsonValue* const value = number("value")) return value->number;
    const JsonValue* const min = number("minValue");
    const JsonValue* const greatest = number("maxValue");
    if (min == nullptr || greatest == nullptr) return std::nullopt;
    return (min->number + greatest->number) / 2.0;
  }

  void read_measured(std::string_view key, WeatherQuantity quantity) {
    const JsonValue* const measured = member(key, Kind::object);
    if (measured == nullptr) return;
    const std::string path = joined_path(path_, key);
    const std::optional<double> figure = figure_of(*measured, path);
    if (!figure) return;
    const JsonValue* const code =
        needed_member_of(*measured, "unitCode", Kind::text, path, findings_);
    if (code == nullptr) return;
    if (const auto unit = unit_of_wmo_code(code->text)) {
      store(*measured, key, quantity, {*figure, *unit});
    } else {
      error(*code, key, fmt::format("unknown unit {}", in_quotes(code->text)));
    }
  }

  void read_wind(std::string_view key, WeatherQuantity quantity) {
    const JsonValue* const value = period_.find(key);
    if (value != nullptr && value->is(Kind::object)) return read_measured(key, quantity);
    const JsonValue* const words = member(key, Kind::text);
    if (words == nullptr || words->text.empty()) return;
    if (const auto measured = wind_in_words(words->text)) {
      store(*words, key, quantity, *measured);
    } else {
      error(*words, key,
            fmt::format("got {}, expected a wind such as '5 to 10 mph'", in_quotes(words->text)));
    }
  }

  void read_sky() {
    SkyTold sky;
    if (const JsonValue* const icon = member("icon", Kind::text)) sky.icon = icon->text;
    if (const JsonValue* const words = member("shortForecast", Kind::text)) sky.words = words->text;
    hour_[cloud] = cloud_fraction_of(sky);
    hour_.thunder = thunder_of(sky);
  }

  const JsonValue& period_;
  std::string path_;
  Findings& findings_;
  DraftHour hour_;
};

/// Adds the hour, unless it does not follow the last one.
void append(std::vector<DraftHour>& hours, const DraftHour& hour, const JsonValue& period,
            std::size_t index, Findings& findings) {
  if (hours.empty() || hours.back().at < hour.at) {
    hours.push_back(hour);
    return;
  }
  findings.error(period.where, joined_path(indexed_path(periods_path, index), "startTime"),
                 hours.back().at == hour.at ? "the same time as the period before"
                                            : "earlier than the period before");
}

std::vector<DraftHour> read_periods(const JsonValue& periods, Findings& findings) {
  std::vector<DraftHour> hours;
  for (std::size_t i = 0; i < periods.items.size() && !findings.full(); ++i) {
    const JsonValue& period = periods.items[i];
    if (!period.is(Kind::object)) {
      findings.error(period.where, indexed_path(periods_path, i),
                     fmt::format("got {}, expected an object", kind_name(period.kind)));
    } else if (const auto hour = PeriodReader{period, i, findings}.read()) {
      append(hours, *hour, period, i, findings);
    }
  }
  return hours;
}

}  // namespace

bool is_nws_hourly(const JsonValue& document) {
  const JsonValue* const properties = document.find("properties");
  return properties != nullptr && properties->find("periods") != nullptr;
}

Parsed<Forecast> read_nws_hourly(const JsonValue& document, const Clock& clock) {
  Findings findings;
  DraftForecast draft{
      .source = "US National Weather Service, hourly forecast", .issued = {}, .hours = {}};
  const JsonValue* const properties =
      needed_member_of(document, "properties", Kind::object, "", findings);
  if (properties == nullptr) return {std::nullopt, findings.take()};
  draft.issued = instant_member_of(*properties, "updateTime", "properties", findings);
  if (!draft.issued)
    draft.issued = instant_member_of(*properties, "generatedAt", "properties", findings);
  if (const JsonValue* const periods =
          needed_member_of(*properties, "periods", Kind::array, "properties", findings))
    draft.hours = read_periods(*periods, findings);
  return conclude(std::move(draft), clock, std::move(findings), properties->where);
}

}  // namespace slabtide
