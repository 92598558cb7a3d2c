#include "wording.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include <fmt/format.h>

#include "core/rounded.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Without trailing zeros, and never "-0".
std::string trimmed(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  const double rounded = std::round(value * scale) / scale;
  return fmt::format("{:g}", rounded == 0.0 ? 0.0 : rounded);
}

}  // namespace

std::string percent_words(double fraction) {
  return fmt::format("{:.0f}%", percent_per_one * fraction);
}

std::string temperature_words(double c, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(fahrenheit_from_celsius(c), 0) + " °F"
                                 : trimmed(c, 0) + " °C";
}

std::string temperature_difference_words(double k, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(k * 1.8, 0) + " °F" : trimmed(k, 0) + " °C";
}

std::string thickness_words(double m, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(in_from_m(m), 2) + " in"
                                 : trimmed(m * mm_per_m, 0) + " mm";
}

std::string length_words(double m, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(ft_from_m(m), 0) + " ft" : trimmed(m, 1) + " m";
}

std::string area_words(double m2, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(ft2_from_m2(m2), 0) + " ft²" : trimmed(m2, 1) + " m²";
}

std::string volume_words(double m3, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.1f} yd³", yd3_from_m3(m3))
                                 : fmt::format("{:.1f} m³", m3);
}

std::string sold_words(double m3, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  return fmt::format("{:.2f} {}", us ? yd3_from_m3(m3) : m3, us ? "yd³" : "m³");
}

std::string wind_words(double m_s, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(mph_from_m_s(m_s), 0) + " mph"
                                 : trimmed(m_s, 1) + " m/s";
}

std::string evaporation_words(double kg_m2_h, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.2f} lb/ft²/h", lb_ft2_h_from_kg_m2_h(kg_m2_h))
                                 : fmt::format("{:.1f} kg/m²/h", kg_m2_h);
}

std::string content_words(double kg_m3, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(lb_yd3_from_kg_m3(kg_m3), 0) + " lb/yd³"
                                 : trimmed(kg_m3, 0) + " kg/m³";
}

std::string strength_words(double psi, UnitSystem units) {
  return units == UnitSystem::us ? trimmed(psi, 0) + " psi"
                                 : trimmed(mpa_from_psi(psi), 1) + " MPa";
}

std::string money_words(double money, const std::string& currency) {
  constexpr double whole_from = 10.0;
  constexpr std::size_t group = 3;
  const int decimals = std::abs(money) < whole_from ? 2 : 0;
  const double shown = rounded(money, decimals);
  std::string figures = fmt::format("{:.{}f}", std::abs(shown), shown == 0.0 ? 0 : decimals);
  const std::size_t point = std::min(figures.find('.'), figures.size());
  for (std::size_t at = point; at > group; at -= group) figures.insert(at - group, ",");
  const bool is_code =
      !currency.empty() && std::isalpha(static_cast<unsigned char>(currency.back()));
  return fmt::format("{}{}{}{}", shown < 0.0 ? "-" : "", currency, is_code ? " " : "", figures);
}

std::string names_words(const std::vector<std::string>& names, std::size_t max_named) {
  // One left over is as short as "and 1 more".
  const bool all = names.size() <= max_named + 1;
  const std::size_t listed = all ? names.size() : max_named;
  std::string words;
  for (std::size_t i = 0; i < listed; ++i) {
    const bool last_of_all = all && i > 0 && i + 1 == listed;
    words += fmt::format("{}{}", i == 0 ? "" : last_of_all ? " and " : ", ", names[i]);
  }
  return all ? words : fmt::format("{} and {} more", words, names.size() - listed);
}

std::string duration_words(double minutes) {
  const long whole = std::lround(std::abs(minutes));
  const long hours = whole / minutes_per_hour;
  const long rest = whole % minutes_per_hour;
  if (hours == 0) return fmt::format("{} min", rest);
  return rest == 0 ? fmt::format("{} h", hours) : fmt::format("{} h {} min", hours, rest);
}

}  // namespace slabtide
