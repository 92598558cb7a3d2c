#include "nws_grid.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "findings.h"
#include "forecast_draft.h"
#include "iso_interval.h"
#include "json_fields.h"
#include "nws_values.h"

namespace slabtide {
namespace {

using Kind = JsonValue::Kind;
using enum WeatherQuantity;

constexpr long hour_s = 3600;
/// The service forecasts eight days ahead; more than a month must be a corrupt file.
constexpr long max_hours = 31L * 24;

struct LayerKind {
  std::string_view name;
  WeatherQuantity quantity;
};

constexpr std::array<LayerKind, 8> layer_kinds{{{"temperature", air},
                                                {"dewpoint", dew_point},
                                                {"relativeHumidity", humidity},
                                                {"windSpeed", wind},
                                                {"windGust", gust},
                                                {"skyCover", cloud},
                                                {"probabilityOfPrecipitation", rain_chance},
                                                {"quantitativePrecipitation", rain}}};
constexpr std::string_view weather_layer = "weather";

/// True for the quantities a plan requires, which decide the hours; other layers may begin earlier
/// and end later.
constexpr bool decides_the_hours(WeatherQuantity quantity) {
  return quantity == air || quantity == dew_point || quantity == humidity || quantity == wind;
}

UtcTime end_of(const IsoInterval& interval) { return interval.start + interval.length; }

std::string path_of(std::string_view layer) { return joined_path("properties", layer); }

/// A value that holds over an interval, and where it stands.
struct Span {
  IsoInterval interval;
  const JsonValue* value = nullptr;
  std::string path;
  SourcePosition where;
};

/// Reads the intervals of a layer; the caller reads the values.
class LayerReader {
 public:
  LayerReader(const JsonValue& layer, std::string_view name, Findings& findings)
      : layer_(layer), path_(path_of(name)), findings_(findings) {}

  std::vector<Span> read() {
    const JsonValue* const values = member_of(layer_, "values", Kind::array, path_, findings_);
    if (values == nullptr) return {};
    const std::string values_path = joined_path(path_, "values");
    for (std::size_t i = 0; i < values->items.size() && !findings_.full(); ++i)
      read_entry(values->items[i], indexed_path(values_path, i));
    return std::move(spans_);
  }

 private:
  void read_entry(const JsonValue& entry, std::string path) {
    if (!entry.is(Kind::object)) {
      findings_.error(entry.where, std::move(path),
                      fmt::format("got {}, expected an object", kind_name(entry.kind)));
      return;
    }
    const JsonValue* const valid =
        needed_member_of(entry, "validTime", Kind::text, path, findings_);
    if (valid == nullptr) return;
    if (const auto interval = parse_interval(valid->text)) {
      append(*interval, *valid, entry, std::move(path));
    } else {
      findings_.error(valid->where, joined_path(path, "validTime"),
                      fmt::format("{} is not a time with an offset and a duration, such as "
                                  "2026-05-14T12:00:00+00:00/PT1H",
                                  in_quotes(valid->text)));
    }
  }

  void append(const IsoInterval& interval, const JsonValue& valid, const JsonValue& entry,
              std::string path) {
    if (!spans_.empty() && interval.start < end_of(spans_.back().interval)) {
      findings_.error(valid.where, joined_path(path, "validTime"),
                      "begins before the interval before it ends");
      return;
    }
    spans_.push_back({interval, entry.find("value"), std::move(path), valid.where});
  }

  const JsonValue& layer_;
  std::string path_;
  Findings& findings_;
  std::vector<Span> spans_;
};

/// The whole hours from the first interval to the last.
class HourGrid {
 public:
  /// Extends the grid; false if it would become too long.
  bool cover(const IsoInterval& interval) {
    const UtcTime start =
        first_ ? std::min(*first_, floor_hour(interval.start)) : floor_hour(interval.start);
    const UtcTime end = first_ ? std::max(end_, end_of(interval)) : end_of(interval);
    if ((end - start).total_seconds() > max_hours * hour_s) return false;
    first_ = start;
    end_ = end;
    return true;
  }

  std::vector<DraftHour> hours() const {
    std::vector<DraftHour> result;
    if (!first_) return result;
    for (UtcTime at = *first_; at < end_; at += boost::posix_time::hours(1)) {
      result.emplace_back();
      result.back().at = at;
    }
    return result;
  }

 private:
  static UtcTime floor_hour(UtcTime time) {
    return {time.date(), boost::posix_time::hours(time.time_of_day().hours())};
  }

  std::optional<UtcTime> first_;
  UtcTime end_;
};

/// Calls `use` for those of the evenly spaced `hours` that start within the interval.
template <class Use>
void for_each_hour_in(const IsoInterval& interval, std::vector<DraftHour>& hours, Use use) {
  const auto before = [](const DraftHour& hour, UtcTime time) { return hour.at < time; };
  auto hour = std::lower_bound(hours.begin(), hours.end(), interval.start, before);
  for (; hour != hours.end() && hour->at < end_of(interval); ++hour) use(*hour);
}

/// Fraction of the interval that falls into the hour starting at `at`; not positive if none does.
double fraction_within(const IsoInterval& interval, UtcTime at) {
  const UtcTime from = std::max(at, interval.start);
  const UtcTime to = std::min(at + boost::posix_time::hours(1), end_of(interval));
  return seconds_between(from, to) / static_cast<double>(interval.length.total_seconds());
}

class GridReader {
 public:
  GridReader(const JsonValue& properties, Findings& findings)
      : properties_(properties), findings_(findings) {}

  std::vector<DraftHour> read() {
    for (const LayerKind& kind : layer_kinds) {
      layers_.push_back(read_layer(kind.name));
      if (decides_the_hours(kind.quantity)) cover(layers_.back());
    }
    const std::vector<Span> weather = read_layer(weather_layer);
    if (findings_.has_error()) return {};
    hours_ = grid_.hours();
    for (std::size_t i = 0; i < layer_kinds.size(); ++i) lay(layer_kinds[i], layers_[i]);
    for (const Span& span : weather) lay_weather(span);
    return std::move(hours_);
  }

 private:
  std::vector<Span> read_layer(std::string_view name) {
    const JsonValue* const layer =
        member_of(properties_, name, Kind::object, "properties", findings_);
    if (layer == nullptr) return {};
    return LayerReader{*layer, name, findings_}.read();
  }

  void cover(const std::vector<Span>& spans) {
    for (const Span& span : spans) {
      if (grid_.cover(span.interval)) continue;
      findings_.error(span.where, span.path, "the document covers more than a month");
      return;
    }
  }

  std::optional<WeatherUnit> unit_of(const LayerKind& kind) {
    const JsonValue& layer = *properties_.find(kind.name);
    const std::string path = path_of(kind.name);
    const JsonValue* const code = needed_member_of(layer, "uom", Kind::text, path, findings_);
    if (code == nullptr) return std::nullopt;
    const std::optional<WeatherUnit> unit = unit_of_wmo_code(code->text);
    if (unit && measures(*unit, kind.quantity)) return unit;
    findings_.error(code->where, joined_path(path, "uom"),
                    fmt::format("got {}, no unit of {} known here", in_quotes(code->text),
                                name_of(kind.quantity)));
    return std::nullopt;
  }

  void lay(const LayerKind& kind, const std::vector<Span>& spans) {
    if (spans.empty()) return;
    const std::optional<WeatherUnit> unit = unit_of(kind);
    for (auto span = spans.begin(); unit && span != spans.end() && !findings_.full(); ++span)
      lay_span(kind.quantity, *unit, *span);
  }

  void lay_span(WeatherQuantity quantity, WeatherUnit unit, const Span& span) {
    if (span.value == nullptr || span.value->is(Kind::null)) return;
    if (!span.value->is(Kind::number)) {
      findings_.error(span.value->where, joined_path(span.path, "value"),
                      fmt::format("got {}, expected a number", kind_name(span.value->kind)));
      return;
    }
    DraftHour probe;
    if (const auto fault = put(probe, quantity, span.value->number, unit)) {
      findings_.error(span.value->where, joined_path(span.path, "value"), *fault);
    } else if (quantity == rain) {
      lay_rain(span.interval, *probe[rain]);
    } else {
      for_each_hour_in(span.interval, hours_, [&](DraftHour& hour) { hour.take(quantity, probe); });
    }
  }

  void lay_rain(const IsoInterval& interval, double total_mm) {
    for (DraftHour& hour : hours_) {
      const double fraction = fraction_within(interval, hour.at);
      if (fraction > 0.0) hour[rain] = hour[rain].value_or(0.0) + total_mm * fraction;
    }
  }

  void lay_weather(const Span& span) {
    if (span.value == nullptr || !span.value->is(Kind::array)) return;
    const auto is_thunder = [](const JsonValue& kind) {
      const JsonValue* const name = kind.find("weather");
      return name != nullptr && name->text == "thunderstorms";
    };
    if (std::any_of(span.value->items.begin(), span.value->items.end(), is_thunder))
      for_each_hour_in(span.interval, hours_, [](DraftHour& hour) { hour.thunder = true; });
  }

  const JsonValue& properties_;
  Findings& findings_;
  HourGrid grid_;
  std::vector<std::vector<Span>> layers_;
  std::vector<DraftHour> hours_;
};

/// Contradictions between layers can only be found once both are on the same hours.
void check_contradictions(const std::vector<DraftHour>& hours, const JsonValue& properties,
                          Findings& findings) {
  for (const DraftHour& hour : hours) {
    if (findings.full()) return;
    if (const auto fault = contradiction(hour)) {
      findings.error(properties.find("dewpoint")->where, path_of("dewpoint"),
                     fmt::format("at {} {}", iso8601_minute(hour.at, TimeZone{}), *fault));
    }
  }
}

}  // namespace

bool is_nws_grid(const JsonValue& document) {
  const JsonValue* const properties = document.find("properties");
  if (properties == nullptr) return false;
  return std::any_of(layer_kinds.begin(), layer_kinds.end(), [&](const LayerKind& kind) {
    const JsonValue* const layer = properties->find(kind.name);
    return layer != nullptr && layer->is(Kind::object);
  });
}

Parsed<Forecast> read_nws_grid(const JsonValue& document, const Clock& clock) {
  Findings findings;
  const JsonValue* const properties =
      needed_member_of(document, "properties", Kind::object, "", findings);
  if (properties == nullptr) return {std::nullopt, findings.take()};
  DraftForecast draft{
      .source = "US National Weather Service, grid forecast",
      .issued = instant_member_of(*properties, "updateTime", "properties", findings),
      .hours = GridReader{*properties, findings}.read()};
  check_contradictions(draft.hours, *properties, findings);
  return conclude(std::move(draft), clock, std::move(findings), properties->where);
}

}  // namespace slabtide
