#include "support/random_toml.h"

#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/units.h"

namespace slabtide::test {

namespace {

/// Wrong values in place of a number or a text.
constexpr std::array<std::string_view, 17> slipped{
    "0",     "-1",   "0.0", "-0.0", "1e308", "-1e308",         "nan",    "inf",        "\"eight\"",
    "1e-12", "true", "[]",  "[1]",  "99999", "\"2026-05-14\"", "1e-320", R"("a\n\tb")"};

double mpa_from_psi_value(double psi) { return mpa_from_psi(psi); }

}  // namespace

void RandomToml::line(std::string_view line) {
  text_ += line;
  text_ += '\n';
}

void RandomToml::raw(std::string_view key, std::string_view value) {
  constexpr std::size_t one_left_out_in = 200;
  if (slips_ && bytes_.one_in(one_left_out_in)) return;
  line(fmt::format("{} = {}", key, slip(std::string(value))));
}

std::string RandomToml::slip(std::string value) {
  constexpr std::size_t one_slip_in = 60;
  if (!slips_ || !bytes_.one_in(one_slip_in)) return value;
  return std::string(bytes_.one_of(slipped));
}

std::string RandomToml::quoted(std::string_view text) {
  constexpr unsigned char first_printable = 0x20;
  std::string quoted = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      quoted += '\\';
      quoted += c;
    } else if (byte < first_printable) {
      quoted += fmt::format("\\u{:04X}", byte);
    } else {
      quoted += c;
    }
  }
  return quoted + '"';
}

void RandomToml::word(std::string_view key, std::string_view value) { raw(key, quoted(value)); }
void RandomToml::number(std::string_view key, double value) {
  raw(key, fmt::format("{:.6g}", value));
}
void RandomToml::whole(std::string_view key, int value) { raw(key, fmt::format("{}", value)); }
void RandomToml::yes_no(std::string_view key, bool value) { raw(key, value ? "true" : "false"); }

void RandomToml::quantity(std::string_view key, double us, const Unit& unit) {
  constexpr std::size_t one_with_suffix_in = 8;
  bool si = si_;
  std::string name(key);
  if (bytes_.one_in(one_with_suffix_in)) {
    si = bytes_.below(2) == 1;
    name += fmt::format("_{}", si ? unit.si_suffix : unit.us_suffix);
  }
  number(name, si ? unit.si_from_us(us) : us);
}

void RandomToml::length(std::string_view key, double ft) {
  quantity(key, ft, {"ft", "m", m_from_ft});
}
void RandomToml::thickness(std::string_view key, double in) {
  quantity(key, in, {"in", "mm", mm_from_in});
}
void RandomToml::temperature(std::string_view key, double f) {
  quantity(key, f, {"f", "c", celsius_from_fahrenheit});
}
void RandomToml::wind(std::string_view key, double mph) {
  quantity(key, mph, {"mph", "m_s", m_s_from_mph});
}
void RandomToml::content(std::string_view key, double lb_yd3) {
  quantity(key, lb_yd3, {"lb_yd3", "kg_m3", kg_m3_from_lb_yd3});
}
void RandomToml::strength(std::string_view key, double psi) {
  quantity(key, psi, {"psi", "mpa", mpa_from_psi_value});
}
void RandomToml::dose(std::string_view key, double floz_cwt) {
  quantity(key, floz_cwt, {"floz_cwt", "ml_100kg", ml_100kg_from_floz_cwt});
}
void RandomToml::volume(std::string_view key, double yd3) {
  quantity(key, yd3, {"yd3", "m3", m3_from_yd3});
}
void RandomToml::percent(std::string_view key, double percent) {
  number(key, std::round(percent));  // values under 1 are taken for fractions
}
void RandomToml::insulation(std::string_view key, double r_us) {
  quantity(key, r_us, {"us", "m2k_w", m2k_w_from_r_us});
}

std::string RandomToml::point(double x_ft, double y_ft) {
  const double unit = si_ ? m_from_ft(1.0) : 1.0;
  return fmt::format("[{:.6g}, {:.6g}]", x_ft * unit, y_ft * unit);
}

}  // namespace slabtide::test
