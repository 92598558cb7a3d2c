#include "quantity.h"

#include <array>
#include <cmath>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr double same(double v) { return v; }
constexpr double times_1000(double v) { return v * 1000.0; }
constexpr double per_100(double v) { return v / 100.0; }
constexpr double times_100(double v) { return v * 100.0; }
constexpr double per_60(double v) { return v / 60.0; }
constexpr double times_60(double v) { return v * 60.0; }
constexpr double knots_from_m_s(double v) { return v * 3600.0 / 1852.0; }
constexpr double r_us_from_m2k_w(double v) { return v / m2k_w_from_r_us(1.0); }

constexpr Unit in{"in", "in", m_from_in, in_from_m};
constexpr Unit mm{"mm", "mm", m_from_mm, times_1000};
constexpr Unit cm{"cm", "cm", per_100, times_100};
constexpr Unit m{"m", "m", same, same};
constexpr Unit ft{"ft", "ft", m_from_ft, ft_from_m};
constexpr Unit percent{"percent", "%", per_100, times_100};
constexpr Unit fraction{"share", "as a share", same, same};

constexpr std::array thickness_units{in, mm, cm, m, ft};
constexpr std::array length_units{ft, m, in, cm};
constexpr std::array temperature_units{
    Unit{"f", "°F", celsius_from_fahrenheit, fahrenheit_from_celsius}, Unit{"c", "°C", same, same}};
constexpr std::array wind_units{Unit{"mph", "mph", m_s_from_mph, mph_from_m_s},
                                Unit{"m_s", "m/s", same, same},
                                Unit{"km_h", "km/h", m_s_from_km_h, km_h_from_m_s},
                                Unit{"knots", "knots", m_s_from_knots, knots_from_m_s}};
constexpr std::array content_units{Unit{"lb_yd3", "lb/yd³", kg_m3_from_lb_yd3, lb_yd3_from_kg_m3},
                                   Unit{"kg_m3", "kg/m³", same, same}};
constexpr std::array strength_units{Unit{"psi", "psi", same, same},
                                    Unit{"mpa", "MPa", psi_from_mpa, mpa_from_psi}};
constexpr std::array placing_rate_units{Unit{"yd3_h", "yd³/h", m3_from_yd3, yd3_from_m3},
                                        Unit{"m3_h", "m³/h", same, same}};
constexpr std::array volume_units{Unit{"yd3", "yd³", m3_from_yd3, yd3_from_m3},
                                  Unit{"m3", "m³", same, same}};
constexpr std::array dose_units{
    Unit{"floz_cwt", "fl oz/cwt", ml_100kg_from_floz_cwt, floz_cwt_from_ml_100kg},
    Unit{"ml_100kg", "mL/100 kg", same, same}};
constexpr std::array insulation_units{Unit{"us", "h·ft²·°F/Btu", m2k_w_from_r_us, r_us_from_m2k_w},
                                      Unit{"m2k_w", "m²K/W", same, same}};
/// Percent is the default unit in files of both systems.
constexpr std::array fraction_units{percent, percent, fraction};
// Prices for an amount: what a conversion does to the amount divides them.
constexpr double per_yd3_from_per_m3(double v) { return m3_from_yd3(v); }
constexpr double per_m3_from_per_yd3(double v) { return yd3_from_m3(v); }
constexpr double per_lb_from_per_kg(double v) { return v * kg_per_lb; }
constexpr double per_kg_from_per_lb(double v) { return v / kg_per_lb; }
constexpr double per_ft2_from_per_m2(double v) { return m2_from_ft2(v); }
constexpr double per_m2_from_per_ft2(double v) { return ft2_from_m2(v); }
constexpr double per_floz_from_per_l(double v) { return v * l_per_floz; }
constexpr double per_l_from_per_floz(double v) { return v / l_per_floz; }
constexpr double per_gal_from_per_l(double v) { return v * l_per_gal; }
constexpr double per_l_from_per_gal(double v) { return v / l_per_gal; }
constexpr double per_1000(double v) { return v / 1000.0; }

constexpr std::array price_per_volume_units{
    Unit{"per_yd3", "per yd³", per_m3_from_per_yd3, per_yd3_from_per_m3},
    Unit{"per_m3", "per m³", same, same}};
constexpr std::array price_per_liquid_units{
    Unit{"per_floz", "per fl oz", per_l_from_per_floz, per_floz_from_per_l},
    Unit{"per_l", "per L", same, same},
    Unit{"per_gal", "per gal", per_l_from_per_gal, per_gal_from_per_l},
    Unit{"per_ml", "per mL", times_1000, per_1000}};
constexpr std::array price_per_mass_units{
    Unit{"per_lb", "per lb", per_kg_from_per_lb, per_lb_from_per_kg},
    Unit{"per_kg", "per kg", same, same}};
constexpr std::array price_per_area_units{
    Unit{"per_ft2", "per ft²", per_m2_from_per_ft2, per_ft2_from_per_m2},
    Unit{"per_m2", "per m²", same, same}};
constexpr std::array price_per_length_units{Unit{"per_ft", "per ft", ft_from_m, m_from_ft},
                                            Unit{"per_m", "per m", same, same}};
constexpr std::array minutes_units{Unit{"min", "min", same, same}, Unit{"min", "min", same, same},
                                   Unit{"h", "h", times_60, per_60}};
constexpr std::array hours_units{Unit{"h", "h", same, same}, Unit{"h", "h", same, same},
                                 Unit{"min", "min", per_60, times_60}};

/// `rounded` is std::ceil or std::floor.
std::string three_figures(double value, double (*rounded)(double)) {
  if (value == 0.0) return "0";
  constexpr double figures = 3.0;
  constexpr double noise = 1e-9;  // of conversions
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(value))) + 1.0 - figures);
  const double steps = value / step;
  const double nearest = std::round(steps);
  const bool is_exact = std::abs(steps - nearest) < noise * std::abs(steps);
  return fmt::format("{:.10g}", (is_exact ? nearest : rounded(steps)) * step);
}

/// The other units in which the same number would have been in range.
std::vector<Unit> units_that_fit(double value, const Unit& used, const Quantity& kind,
                                 const Range& range) {
  std::vector<Unit> fitting;
  for (const auto& unit : kind.units) {
    if (unit.suffix != used.suffix && range.holds(unit.to_si(value))) fitting.push_back(unit);
  }
  return fitting;
}

}  // namespace

const Quantity thickness_quantity{thickness_units};
const Quantity length_quantity{length_units};
const Quantity temperature_quantity{temperature_units, 0.0, true};
const Quantity wind_quantity{wind_units};
const Quantity content_quantity{content_units};
const Quantity strength_quantity{strength_units};
const Quantity strength_margin_quantity{strength_units, 100.0};  // a share in percent
const Quantity placing_rate_quantity{placing_rate_units};
const Quantity volume_quantity{volume_units};
const Quantity dose_quantity{dose_units};
const Quantity insulation_quantity{insulation_units};
const Quantity fraction_quantity{fraction_units, 1.0};
const Quantity price_per_volume_quantity{price_per_volume_units};
const Quantity price_per_liquid_quantity{price_per_liquid_units};
const Quantity price_per_mass_quantity{price_per_mass_units};
const Quantity price_per_area_quantity{price_per_area_units};
const Quantity price_per_length_quantity{price_per_length_units};
const Quantity minutes_quantity{minutes_units};
const Quantity hours_quantity{hours_units};

std::string shown(const Range& range, const Unit& unit) {
  return with_unit(shown(Range{unit.from_si(range.low), unit.from_si(range.high)}), unit);
}

std::string shown(const Range& range) {
  return fmt::format("{} to {}", three_figures(range.low, std::ceil),
                     three_figures(range.high, std::floor));
}

std::string typed_number(double value) { return fmt::format("{:.15g}", value); }

std::string with_unit(std::string_view number, const Unit& unit) {
  return fmt::format("{}{}{}", number, unit.shown == "%" ? "" : " ", unit.shown);
}

std::string shown(double in_unit, const Unit& unit) {
  return with_unit(typed_number(in_unit), unit);
}

std::string expected_words(double in_unit, const Unit& unit, const Quantity& kind,
                           const Range& range) {
  if (!kind.is_slip(in_unit, unit)) return shown(range, unit);
  return fmt::format("0, or {} and more", with_unit(fmt::format("{:.3g}", kind.slip_below), unit));
}

std::string with_suffix(std::string_view key, const Unit& unit) {
  return fmt::format("{}_{}", key, unit.suffix);
}

std::vector<std::string> with_suffixes(std::string_view key, const Quantity& kind) {
  std::vector<std::string> result;
  for (const auto& unit : kind.units) {
    auto spelling = with_suffix(key, unit);
    if (result.empty() || result.back() != spelling) result.push_back(std::move(spelling));
  }
  return result;
}

std::string other_observation(std::string_view key, double value, const Unit& used,
                              const Quantity& kind, const Range& range) {
  std::vector<std::string> readings;
  std::vector<std::string> spellings;
  for (const auto& unit : units_that_fit(value, used, kind, range)) {
    const double in_used = used.from_si(unit.to_si(value));
    readings.push_back(fmt::format("{} is {}", shown(value, unit),
                                   with_unit(fmt::format("{:.3g}", in_used), used)));
    spellings.push_back(fmt::format("{} = {}", with_suffix(key, unit), typed_number(value)));
  }
  if (readings.empty()) return {};
  return fmt::format("{}; if {} is meant, write {}", fmt::join(readings, ", "),
                     readings.size() == 1 ? "that" : "one of these", fmt::join(spellings, " or "));
}

}  // namespace slabtide
