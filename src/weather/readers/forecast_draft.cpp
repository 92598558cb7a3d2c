#include "forecast_draft.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include <fmt/format.h>

#include "forecast_time.h"
#include "job/model/limits.h"
#include "slabtide/core/units.h"
#include "slabtide/weather/air/moist_air.h"

namespace slabtide {
namespace {

/// Rounding: whole-degree temperatures beside a dew point given to the hundredth can differ this
/// much.
constexpr double dew_point_excess_k = 2.0;
/// The lowest dew point that weather_quantity accepts; 1 % humidity in bitter cold is drier.
constexpr double driest_dew_point_c = -90.0;

bool tells(const DraftHour& hour, WeatherQuantity quantity) {
  return quantity == WeatherQuantity::dew_point ? hour.has_moisture() : hour[quantity].has_value();
}

void find_row_gaps(const std::vector<DraftHour>& hours, std::vector<ForecastGap>& gaps) {
  for (std::size_t i = 1; i < hours.size(); ++i) {
    if (seconds_between(hours[i - 1].at, hours[i].at) > seconds_per_hour)
      gaps.push_back({std::nullopt, i - 1, i});
  }
}

/// Without air temperature, humidity gives no dew point: that is one gap, not two.
bool follows_from_air(const std::vector<ForecastGap>& gaps, WeatherQuantity quantity,
                      std::size_t before, std::size_t after) {
  return quantity == WeatherQuantity::dew_point &&
         std::any_of(gaps.begin(), gaps.end(), [&](const ForecastGap& gap) {
           return gap.quantity == WeatherQuantity::air && gap.before == before &&
                  gap.after == after;
         });
}

/// Gaps of one quantity that are not simply missing hours.
void find_quantity_gaps(const std::vector<DraftHour>& hours, WeatherQuantity quantity,
                        std::vector<ForecastGap>& gaps) {
  std::optional<std::size_t> last;
  for (std::size_t i = 0; i < hours.size(); ++i) {
    if (!tells(hours[i], quantity)) continue;
    const bool is_gap =
        last && i - *last > 1 && seconds_between(hours[*last].at, hours[i].at) > seconds_per_hour;
    if (is_gap && !follows_from_air(gaps, quantity, *last, i)) gaps.push_back({quantity, *last, i});
    last = i;
  }
}

std::string gap_note(const ForecastGap& gap, const std::vector<DraftHour>& hours,
                     const Clock& clock) {
  const UtcTime from = hours[gap.before].at;
  const UtcTime to = hours[gap.after].at;
  const bool filled = seconds_between(from, to) <= longest_filled_gap_s;
  return fmt::format("no {} between {} and {}{}", gap.quantity ? name_of(*gap.quantity) : "hours",
                     clock.weekday_time(from), clock.weekday_time(to),
                     filled ? ", filled from the hours around" : ": too long to fill");
}

/// Removes hours at both ends that lack what a plan needs, and notes how many.
void trim(std::vector<DraftHour>& hours, std::vector<std::string>& notes) {
  const auto usable = [](const DraftHour& hour) { return hour.is_usable(); };
  const auto first = std::find_if(hours.begin(), hours.end(), usable);
  const auto last = std::find_if(hours.rbegin(), std::make_reverse_iterator(first), usable).base();
  const auto note = [&notes](auto count, std::string_view end) {
    if (count > 0) {
      notes.push_back(
          fmt::format("left out the {} {} hour{}, without air temperature, moisture or wind", end,
                      count, count == 1 ? "" : "s"));
    }
  };
  note(std::distance(hours.begin(), first), "first");
  note(std::distance(last, hours.end()), "last");
  hours = std::vector<DraftHour>(first, last);
}

/// A quantity and the range a job file would accept for it.
struct Placeable {
  WeatherQuantity quantity;
  Range range;
  std::array<WeatherUnit, 2> shown;
};

constexpr std::array<Placeable, 2> placeables{
    {{WeatherQuantity::air, limits::typed_air_c, {WeatherUnit::fahrenheit, WeatherUnit::celsius}},
     {WeatherQuantity::wind, limits::typed_winds_m_s, {WeatherUnit::mph, WeatherUnit::m_s}}}};

std::string in_both(double si_value, const Placeable& placeable) {
  const auto [first, second] = placeable.shown;
  return fmt::format("{:.0f} {} ({:.0f} {})", si_to(si_value, first), symbol_of(first),
                     si_to(si_value, second), symbol_of(second));
}

/// Possible weather in which nobody places concrete: most likely the wrong unit.
void warn_of_unplaceable(const std::vector<DraftHour>& hours, const Clock& clock,
                         SourcePosition where, Findings& findings) {
  for (const Placeable& placeable : placeables) {
    const auto odd = std::find_if(hours.begin(), hours.end(), [&](const DraftHour& hour) {
      const auto value = hour[placeable.quantity];
      return value && !placeable.range.holds(*value);
    });
    if (odd == hours.end()) continue;
    findings.warning(
        where, "",
        fmt::format("{} of {} on {}: no concrete is placed in that", name_of(placeable.quantity),
                    in_both(*(*odd)[placeable.quantity], placeable), clock.weekday_time(odd->at)),
        "check the unit the forecast is in");
  }
}

/// Why no hour is usable.
std::string never_told(const std::vector<DraftHour>& hours) {
  if (hours.empty()) return "no hours";
  const auto told = [&hours](WeatherQuantity quantity) {
    return std::any_of(hours.begin(), hours.end(),
                       [=](const DraftHour& hour) { return tells(hour, quantity); });
  };
  if (!told(WeatherQuantity::air)) return "no hour gives the air temperature";
  if (!told(WeatherQuantity::dew_point)) return "no hour gives the dew point or the humidity";
  if (!told(WeatherQuantity::wind)) return "no hour gives the wind";
  return "no hour gives air temperature, moisture and wind together";
}

std::optional<double> settled_dew_point(const DraftHour& draft) {
  const std::optional<double> air_c = draft[WeatherQuantity::air];
  std::optional<double> dew_point_c = draft[WeatherQuantity::dew_point];
  const std::optional<double> humidity = draft[WeatherQuantity::humidity];
  if (!dew_point_c && air_c && humidity)
    dew_point_c = std::max(dew_point_from_humidity_c(*air_c, *humidity), driest_dew_point_c);
  if (dew_point_c && air_c) dew_point_c = std::min(*dew_point_c, *air_c);
  return dew_point_c;
}

ForecastHour settled(const DraftHour& draft) {
  return ForecastHour{.at = draft.at,
                      .air_c = draft[WeatherQuantity::air],
                      .dew_point_c = settled_dew_point(draft),
                      .wind_10m_m_s = draft[WeatherQuantity::wind],
                      .gust_10m_m_s = draft[WeatherQuantity::gust],
                      .cloud_fraction = draft[WeatherQuantity::cloud],
                      .solar_w_m2 = draft[WeatherQuantity::solar],
                      .rain_mm = draft[WeatherQuantity::rain],
                      .rain_chance = draft[WeatherQuantity::rain_chance],
                      .thunder = draft.thunder};
}

}  // namespace

void DraftHour::take(WeatherQuantity quantity, const DraftHour& other) {
  const auto index = static_cast<std::size_t>(quantity);
  values.at(index) = other.values.at(index);
  written_in.at(index) = other.written_in.at(index);
}

std::string DraftHour::as_written(WeatherQuantity quantity) const {
  const WeatherUnit unit = written_in.at(static_cast<std::size_t>(quantity));
  return fmt::format("{:.6g} {}", si_to((*this)[quantity].value(), unit), symbol_of(unit));
}

bool DraftHour::has_moisture() const {
  if ((*this)[WeatherQuantity::dew_point]) return true;
  return (*this)[WeatherQuantity::humidity] && (*this)[WeatherQuantity::air];
}

bool DraftHour::is_usable() const {
  return (*this)[WeatherQuantity::air] && has_moisture() && (*this)[WeatherQuantity::wind];
}

std::vector<ForecastGap> find_gaps(const std::vector<DraftHour>& hours) {
  std::vector<ForecastGap> gaps;
  find_row_gaps(hours, gaps);
  for (const WeatherQuantity quantity : {WeatherQuantity::air, WeatherQuantity::dew_point,
                                         WeatherQuantity::wind, WeatherQuantity::cloud})
    find_quantity_gaps(hours, quantity, gaps);
  return gaps;
}

std::optional<std::string> contradiction(const DraftHour& hour) {
  const std::optional<double> air_c = hour[WeatherQuantity::air];
  const std::optional<double> dew_point_c = hour[WeatherQuantity::dew_point];
  if (!air_c || !dew_point_c || *dew_point_c <= *air_c + dew_point_excess_k) return std::nullopt;
  return fmt::format("the dew point ({}) is above the air temperature ({})",
                     hour.as_written(WeatherQuantity::dew_point),
                     hour.as_written(WeatherQuantity::air));
}

std::optional<std::string> put(DraftHour& hour, WeatherQuantity quantity, double value,
                               WeatherUnit unit) {
  std::optional<std::string> fault = impossible(quantity, value, unit);
  if (fault) return fault;
  hour[quantity] = si_from(value, unit);
  hour.written_in.at(static_cast<std::size_t>(quantity)) = unit;
  return std::nullopt;
}

Parsed<Forecast> conclude(DraftForecast draft, const Clock& clock, Findings findings,
                          SourcePosition where) {
  if (findings.has_error()) return {std::nullopt, findings.take()};
  const std::string missing = never_told(draft.hours);
  Forecast forecast{
      .source = std::move(draft.source), .issued = draft.issued, .hours = {}, .notes = {}};
  trim(draft.hours, forecast.notes);
  if (draft.hours.empty()) {
    findings.error(where, "", missing);
    return {std::nullopt, findings.take()};
  }
  warn_of_unplaceable(draft.hours, clock, where, findings);
  for (const ForecastGap& gap : find_gaps(draft.hours)) {
    forecast.notes.push_back(gap_note(gap, draft.hours, clock));
  }
  std::transform(draft.hours.begin(), draft.hours.end(), std::back_inserter(forecast.hours),
                 settled);
  return {std::move(forecast), findings.take()};
}

}  // namespace slabtide
