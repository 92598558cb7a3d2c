#include "read_forecast.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "core/utf8.h"
#include "findings.h"
#include "forecast_csv.h"
#include "json_value.h"
#include "nws_grid.h"
#include "nws_hourly.h"
#include "open_meteo.h"

namespace slabtide {
namespace {

/// A text and, if it is JSON, its parsed content.
struct Document {
  std::string_view text;
  const JsonValue* json = nullptr;
};

struct Format {
  bool (*recognised)(const Document& document);
  Parsed<Forecast> (*read)(const Document& document, const Clock& clock);
};

template <bool (*is_it)(const JsonValue&), Parsed<Forecast> (*read)(const JsonValue&, const Clock&)>
constexpr Format json_format{
    [](const Document& document) { return document.json != nullptr && is_it(*document.json); },
    [](const Document& document, const Clock& clock) { return read(*document.json, clock); }};

/// To add a format, add a row here. The first format that recognises the document reads it.
constexpr std::array<Format, 4> formats{{
    json_format<is_nws_hourly, read_nws_hourly>,
    json_format<is_nws_grid, read_nws_grid>,
    json_format<is_open_meteo, read_open_meteo>,
    {[](const Document& document) {
       return document.json == nullptr && looks_like_forecast_csv(document.text);
     },
     [](const Document& document, const Clock& clock) {
       return read_forecast_csv(document.text, clock);
     }},
}};

constexpr std::string_view white_space = " \t\r\n";

Parsed<Forecast> refused(std::string message) {
  Findings findings;
  findings.error({1, 1}, "", std::move(message),
                 "run 'slabtide fetch' for tomorrow's forecast, or type an hourly table: "
                 "time,air_f,dew_point_f,wind_mph,cloud_percent");
  return {std::nullopt, findings.take()};
}

/// The first character that is not blank; a space if there is none.
char first_mark(std::string_view text) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  const std::size_t first = text.find_first_not_of(white_space);
  return first == std::string_view::npos ? ' ' : text[first];
}

/// Why the text cannot be a forecast; empty if it may be one.
std::string_view plainly_wrong(std::string_view text) {
  if (text.find('\0') != std::string_view::npos) return "the forecast is not a text file";
  if (first_mark(text) == ' ') return "the forecast is empty";
  if (first_mark(text) == '<') return "this is a web page, not a forecast";
  return {};
}

std::string text_of(const JsonValue& object, std::string_view key) {
  const JsonValue* const member = object.find(key);
  return member == nullptr ? "" : member->text;
}

/// Why a JSON document is not of any known format, naming the likely mistakes.
std::string unknown_json(const JsonValue& json) {
  const JsonValue* const properties = json.find("properties");
  if (properties != nullptr && properties->find("forecastGridData") != nullptr)
    return "this only says where the forecast is, it is not the forecast";
  if (const std::string title = text_of(json, "title"); !title.empty())
    return fmt::format("the service gave no forecast: {} {}", title, text_of(json, "detail"));
  if (json.is(JsonValue::Kind::array) && !json.items.empty() &&
      json.items.front().find("hourly") != nullptr)
    return "these are the forecasts of several places, expected one";
  return "a JSON document, but not a forecast of a known kind";
}

Parsed<Forecast> read_document(const Document& document, const Clock& clock) {
  const auto* const format =
      std::find_if(formats.begin(), formats.end(),
                   [&](const Format& candidate) { return candidate.recognised(document); });
  if (format != formats.end()) return format->read(document, clock);
  return refused(document.json == nullptr ? "not a forecast of a known kind"
                                          : unknown_json(*document.json));
}

}  // namespace

Parsed<Forecast> read_forecast(std::string_view text, const Clock& clock) {
  if (const auto fault = plainly_wrong(text); !fault.empty()) return refused(std::string{fault});
  const char mark = first_mark(text);
  if (mark != '{' && mark != '[') return read_document({text, nullptr}, clock);
  const Parsed<JsonValue> json = parse_json(text);
  if (!json.ok()) return {std::nullopt, json.diagnostics};
  return read_document({text, &*json.value}, clock);
}

}  // namespace slabtide
