#include "weather_quantity.h"

#include <fmt/format.h>

#include "job/toml/quantity.h"
#include "slabtide/core/units.h"

namespace slabtide {
namespace {

double identity(double value) { return value; }
double fraction_from_percent(double percent) { return percent / percent_per_one; }
double percent_from_fraction(double fraction) { return fraction * percent_per_one; }
double knots_from_m_s(double m_s) { return m_s / m_s_from_knots(1.0); }
double in_from_mm(double mm) { return mm / mm_per_inch; }
double mm_from_m(double m) { return m * mm_per_m; }

enum class Dimension { temperature, fraction, speed, flux, depth };

struct UnitRow {
  std::string_view symbol;
  Dimension dimension;
  double (*to_si)(double);
  double (*from_si)(double);
};

/// In the order of WeatherUnit.
constexpr std::array<UnitRow, 11> units{{
    {"°C", Dimension::temperature, identity, identity},
    {"°F", Dimension::temperature, celsius_from_fahrenheit, fahrenheit_from_celsius},
    {"%", Dimension::fraction, fraction_from_percent, percent_from_fraction},
    {"m/s", Dimension::speed, identity, identity},
    {"km/h", Dimension::speed, m_s_from_km_h, km_h_from_m_s},
    {"mph", Dimension::speed, m_s_from_mph, mph_from_m_s},
    {"kn", Dimension::speed, m_s_from_knots, knots_from_m_s},
    {"W/m2", Dimension::flux, identity, identity},
    {"mm", Dimension::depth, identity, identity},
    {"in", Dimension::depth, mm_from_in, in_from_mm},
    {"m", Dimension::depth, mm_from_m, m_from_mm},
}};

struct QuantityRow {
  std::string_view name;
  Dimension dimension;
  double lowest_si;
  double highest_si;
};

/// In the order of WeatherQuantity. The bounds are ours: round figures a little outside the records
/// in the World Meteorological Organization's archive (air -89.2 and 56.7 °C, gust 113 m/s, rain
/// 305 mm in an hour; from memory). The windiest hour on land had about 77 m/s (Mount Washington,
/// 1934; from memory). Humidity under 1 % is an error of the source.
constexpr std::array<QuantityRow, weather_quantity_count> quantities{{
    {"air temperature", Dimension::temperature, -90.0, 60.0},
    {"dew point", Dimension::temperature, -90.0, 40.0},
    {"humidity", Dimension::fraction, 0.01, 1.0},
    {"wind", Dimension::speed, 0.0, 80.0},
    {"gust", Dimension::speed, 0.0, 120.0},
    {"cloud", Dimension::fraction, 0.0, 1.0},
    {"sun", Dimension::flux, 0.0, 1500.0},
    {"rain", Dimension::depth, 0.0, 350.0},
    {"chance of rain", Dimension::fraction, 0.0, 1.0},
}};

const UnitRow& row_of(WeatherUnit unit) { return units.at(static_cast<std::size_t>(unit)); }
const QuantityRow& row_of(WeatherQuantity quantity) {
  return quantities.at(static_cast<std::size_t>(quantity));
}

}  // namespace

std::string_view name_of(WeatherQuantity quantity) { return row_of(quantity).name; }
std::string_view symbol_of(WeatherUnit unit) { return row_of(unit).symbol; }
double si_from(double value, WeatherUnit unit) { return row_of(unit).to_si(value); }
double si_to(double si_value, WeatherUnit unit) { return row_of(unit).from_si(si_value); }

bool measures(WeatherUnit unit, WeatherQuantity quantity) {
  return row_of(unit).dimension == row_of(quantity).dimension;
}

Range possible_si(WeatherQuantity quantity) {
  const QuantityRow& row = row_of(quantity);
  return {row.lowest_si, row.highest_si};
}

std::optional<std::string> impossible(WeatherQuantity quantity, double value, WeatherUnit unit) {
  const QuantityRow& row = row_of(quantity);
  const double si = si_from(value, unit);
  if (si >= row.lowest_si && si <= row.highest_si) return std::nullopt;
  return fmt::format(
      "{} of {} {} is impossible, expected {} {}", row.name, typed_number(value), symbol_of(unit),
      shown(Range{si_to(row.lowest_si, unit), si_to(row.highest_si, unit)}), symbol_of(unit));
}

}  // namespace slabtide
