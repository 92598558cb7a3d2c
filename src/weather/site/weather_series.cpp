#include "slabtide/weather/site/weather_series.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "solar_series.h"
#include "weather/forecast/curve.h"
#include "weather/readers/validate_forecast.h"

namespace slabtide {

/// What a row says about the time up to the next row; the last row's holds for an hour.
struct Spell {
  double from_s;
  double rain_mm_h;
  double rain_chance;
  bool thunder;
};

namespace {

constexpr double noted_gap_s = 3.0 * seconds_per_hour;
constexpr double longest_gap_s = 6.0 * seconds_per_hour;
constexpr double mean_step_s = 600.0;

/// The rows that have one variable, in seconds from the first row of the forecast.
struct Rows {
  std::vector<double> times_s;
  std::vector<double> values;
};

Rows rows_of(const Forecast& forecast, std::optional<double> ForecastHour::*field) {
  Rows rows;
  for (const ForecastHour& hour : forecast.hours) {
    if (!(hour.*field)) continue;
    rows.times_s.push_back(seconds_between(forecast.hours.front().at, hour.at));
    rows.values.push_back(*(hour.*field));
  }
  return rows;
}

std::vector<Spell> spells_of(const Forecast& forecast) {
  const std::vector<ForecastHour>& rows = forecast.hours;
  std::vector<Spell> spells;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double length_s =
        i + 1 < rows.size() ? seconds_between(rows[i].at, rows[i + 1].at) : seconds_per_hour;
    spells.push_back({.from_s = seconds_between(rows.front().at, rows[i].at),
                      .rain_mm_h = rows[i].rain_mm.value_or(0.0) * seconds_per_hour / length_s,
                      .rain_chance = rows[i].rain_chance.value_or(0.0),
                      .thunder = rows[i].thunder});
  }
  return spells;
}

struct Gap {
  double from_s;
  double to_s;
};

Gap longest_gap(const std::vector<double>& times_s) {
  Gap longest{times_s.front(), times_s.front()};
  for (std::size_t i = 1; i < times_s.size(); ++i) {
    const Gap gap{times_s[i - 1], times_s[i]};
    if (gap.to_s - gap.from_s > longest.to_s - longest.from_s) longest = gap;
  }
  return longest;
}

Diagnostic finding(Severity severity, std::string message, std::string next_step) {
  return {.severity = severity,
          .key = {},
          .message = std::move(message),
          .where = {},
          .also_where = {},
          .next_step = std::move(next_step)};
}

/// Findings about a variable that a plan requires; only its longest gap is reported.
void check_needed(const Rows& rows, std::string_view name, UtcTime origin,
                  std::vector<Diagnostic>& findings) {
  if (rows.times_s.empty()) {
    findings.push_back(finding(Severity::error, fmt::format("the forecast has no {}", name),
                               "use a forecast that carries it"));
    return;
  }
  const Gap gap = longest_gap(rows.times_s);
  const double length_s = gap.to_s - gap.from_s;
  if (length_s <= noted_gap_s) return;
  const auto utc = [&](double s) { return iso8601_minute(after_seconds(origin, s), TimeZone()); };
  const std::string message =
      fmt::format("the forecast has no {} for {:.0f} hours, from {} to {}", name,
                  length_s / seconds_per_hour, utc(gap.from_s), utc(gap.to_s));
  findings.push_back(length_s > longest_gap_s
                         ? finding(Severity::error, message,
                                   "fetch the forecast again, or fill in the rows that are missing")
                         : finding(Severity::warning, message, ""));
}

Curve curve_or_zero(Rows rows) {
  if (rows.times_s.empty()) return [](double) { return 0.0; };
  return monotone_curve(std::move(rows.times_s), std::move(rows.values));
}

}  // namespace

struct WeatherSeries::Curves {
  UtcTime origin;
  double first_s;
  double last_s;
  Curve air_c;
  Curve dew_point_c;
  Curve wind_10m_m_s;
  Curve cloud_fraction;
  SolarSeries solar;
  std::vector<Spell> spells;

  double inside_s(UtcTime time) const {
    return std::clamp(seconds_between(origin, time), first_s, last_s);
  }
  /// `s` is inside the range, so there is a row at or before it.
  const Spell& spell_at(double s) const {
    return *(std::upper_bound(spells.begin(), spells.end(), s,
                              [](double at_s, const Spell& spell) { return at_s < spell.from_s; }) -
             1);
  }
};

WeatherSeries::WeatherSeries(std::shared_ptr<const Curves> curves) : curves_(std::move(curves)) {}

Parsed<WeatherSeries> WeatherSeries::from_forecast(const Forecast& forecast) {
  validate(forecast);
  Parsed<WeatherSeries> reading;
  const UtcTime origin = forecast.hours.empty() ? UtcTime() : forecast.hours.front().at;
  Rows air = rows_of(forecast, &ForecastHour::air_c);
  Rows dew_point = rows_of(forecast, &ForecastHour::dew_point_c);
  Rows wind = rows_of(forecast, &ForecastHour::wind_10m_m_s);
  Rows cloud = rows_of(forecast, &ForecastHour::cloud_fraction);
  check_needed(air, "air temperature", origin, reading.diagnostics);
  check_needed(dew_point, "dew point or humidity", origin, reading.diagnostics);
  check_needed(wind, "wind", origin, reading.diagnostics);
  if (has_error(reading.diagnostics)) return reading;
  if (cloud.times_s.empty()) {
    reading.diagnostics.push_back(
        finding(Severity::warning, "the forecast has no cloud cover; a clear sky is assumed", ""));
  }
  const double first_s =
      std::max({air.times_s.front(), dew_point.times_s.front(), wind.times_s.front()});
  const double last_s =
      std::min({air.times_s.back(), dew_point.times_s.back(), wind.times_s.back()});
  reading.value = WeatherSeries(
      std::make_shared<const Curves>(Curves{.origin = origin,
                                            .first_s = first_s,
                                            .last_s = std::max(first_s, last_s),
                                            .air_c = curve_or_zero(std::move(air)),
                                            .dew_point_c = curve_or_zero(std::move(dew_point)),
                                            .wind_10m_m_s = curve_or_zero(std::move(wind)),
                                            .cloud_fraction = curve_or_zero(std::move(cloud)),
                                            .solar = SolarSeries(forecast),
                                            .spells = spells_of(forecast)}));
  return reading;
}

UtcTime WeatherSeries::first() const { return after_seconds(curves_->origin, curves_->first_s); }

UtcTime WeatherSeries::last() const { return after_seconds(curves_->origin, curves_->last_s); }

WeatherSample WeatherSeries::at(UtcTime time) const {
  const double s = curves_->inside_s(time);
  WeatherSample sample;
  sample.air_c = curves_->air_c(s);
  sample.dew_point_c = std::min(curves_->dew_point_c(s), sample.air_c);
  // The curves stay within their rows' values apart from rounding.
  sample.wind_10m_m_s = std::max(0.0, curves_->wind_10m_m_s(s));
  sample.cloud_fraction = std::clamp(curves_->cloud_fraction(s), 0.0, 1.0);
  sample.solar_w_m2 = curves_->solar.at(s);
  const Spell& spell = curves_->spell_at(s);
  sample.rain_mm_h = spell.rain_mm_h;
  sample.rain_chance = spell.rain_chance;
  sample.thunder = spell.thunder;
  return sample;
}

double WeatherSeries::mean_air_c(UtcTime from, UtcTime to) const {
  const double length_s = seconds_between(from, to);
  if (!(length_s > 0.0)) throw std::invalid_argument("weather series: the span is not positive");
  const auto steps = static_cast<int>(std::ceil(length_s / mean_step_s));
  double sum = 0.0;
  for (int i = 0; i < steps; ++i)
    sum += at(after_seconds(from, length_s * (i + 0.5) / steps)).air_c;
  return sum / steps;
}

}  // namespace slabtide
