#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "job/model/limits.h"
#include "slabtide/job/model/job.h"

// The kinds of quantity in a job file, and the units each may be written in.

namespace slabtide {

/// One way to write a quantity: `key_<suffix> = value`.
struct Unit {
  std::string_view suffix;
  std::string_view shown;  ///< as messages show it
  double (*to_si)(double) = nullptr;
  double (*from_si)(double) = nullptr;
};

/// A key without a suffix is in the file's default unit: the first for a US file, the second
/// for a metric one.
struct Quantity {
  std::span<const Unit> units;
  /// Values between 0 and this, in the first unit, are taken for a mistake.
  double slip_below = 0.0;
  bool counts_degrees = false;  ///< "80 degrees" is a number alone

  const Unit& usual(UnitSystem system) const { return units[system == UnitSystem::us ? 0 : 1]; }
  bool is_slip(double in_unit, const Unit& unit) const {
    return unit.suffix == units[0].suffix && in_unit > 0.0 && in_unit < slip_below;
  }
};

extern const Quantity thickness_quantity;         ///< in, mm, cm, m, ft; SI m
extern const Quantity length_quantity;            ///< ft, m, in, cm; SI m
extern const Quantity temperature_quantity;       ///< f, c; SI °C
extern const Quantity wind_quantity;              ///< mph, m_s, km_h, knots; SI m/s
extern const Quantity content_quantity;           ///< lb_yd3, kg_m3; SI kg/m3
extern const Quantity strength_quantity;          ///< psi, mpa; psi inside
extern const Quantity strength_margin_quantity;   ///< the same, over a strength
extern const Quantity placing_rate_quantity;      ///< yd3_h, m3_h; SI m3/h
extern const Quantity volume_quantity;            ///< yd3, m3; SI m3
extern const Quantity dose_quantity;              ///< floz_cwt, ml_100kg; mL/100 kg inside
extern const Quantity insulation_quantity;        ///< us, m2k_w; SI m2K/W
extern const Quantity fraction_quantity;          ///< percent, share; 0 to 1 inside
extern const Quantity price_per_volume_quantity;  ///< per_yd3, per_m3; per m3 inside
extern const Quantity price_per_liquid_quantity;  ///< per_floz, per_l, per_gal, per_ml; per L
extern const Quantity price_per_mass_quantity;    ///< per_lb, per_kg; per kg inside
extern const Quantity price_per_area_quantity;    ///< per_ft2, per_m2; per m2 inside
extern const Quantity price_per_length_quantity;  ///< per_ft, per_m; per m inside
extern const Quantity minutes_quantity;           ///< min, h; minutes inside
extern const Quantity hours_quantity;             ///< h, min; hours inside

/// "2 to 24 in", to three significant figures, rounded inward: whatever lies between is in range.
std::string shown(const Range& range, const Unit& unit);

/// The same for a number without a unit.
std::string shown(const Range& range);

/// A number as it was typed, to 15 figures: "1000000", "0.45".
std::string typed_number(double value);

/// "4.5 in"; "45%", since a percent sign follows at once.
std::string with_unit(std::string_view number, const Unit& unit);

/// "4.5 in", as it was typed.
std::string shown(double in_unit, const Unit& unit);

/// What was expected instead of `in_unit`: the range, or values that would not be a mistake.
std::string expected_words(double in_unit, const Unit& unit, const Quantity& kind,
                           const Range& range);

/// `key_<suffix>`.
std::string with_suffix(std::string_view key, const Unit& unit);
/// The same for every unit of the kind.
std::vector<std::string> with_suffixes(std::string_view key, const Quantity& kind);

/// If the number would have been in range in other units of its kind, what to write then: "68 °F is
/// 20 °C; if that is meant, write concrete_temperature_f = 68". Else empty.
std::string other_observation(std::string_view key, double value, const Unit& used,
                              const Quantity& kind, const Range& range);

}  // namespace slabtide
