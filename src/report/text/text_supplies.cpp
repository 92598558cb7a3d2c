#include "text_supplies.h"

#include <cmath>

#include <fmt/format.h>

#include "core/text.h"
#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

namespace {

/// Rounded up to a multiple of `step`, ignoring rounding errors in `amount`.
std::string enough(double amount, double step, std::string_view unit) {
  constexpr double rounding = 1e-9;
  return fmt::format("{:g} {}", std::ceil(amount / step - rounding) * step, unit);
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

}  // namespace

std::string supply_amount_words(const Supply& supply, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  constexpr double half = 0.5;
  switch (supply_unit(supply.kind)) {
    case SupplyUnit::m3:
      // As in the order, which includes the allowance.
      return volume_words(supply.amount, units);
    case SupplyUnit::kg:
      return us ? enough(lb_from_kg(supply.amount), 1.0, "lb") : enough(supply.amount, half, "kg");
    case SupplyUnit::l:
      return us ? enough(gal_from_l(supply.amount), half, "gal") : enough(supply.amount, 1.0, "L");
    case SupplyUnit::m2:
      return us ? enough(ft2_from_m2(supply.amount), 1.0, "ft²") : enough(supply.amount, 1.0, "m²");
  }
  return {};
}

std::string supply_lines(const std::vector<Supply>& supplies, UnitSystem units,
                         const TextStyle& style) {
  constexpr std::size_t name_width = 24;
  constexpr std::size_t amount_width = 12;
  constexpr std::size_t note_column = 2 + name_width + amount_width;
  std::string text;
  for (const Supply& supply : supplies) {
    const std::string where =
        supply.area_m2 > 0.0
            ? fmt::format("on {}: {}", area_words(supply.area_m2, units), joined(supply.zones))
            : std::string("as ordered, with the allowance");
    const std::string name = supply.kind == SupplyKind::release_liquid
                                 ? "  or liquid"
                                 : std::string(supply_words(supply.kind));
    text += fmt::format("  {}{}{}\n", pad(name, name_width),
                        pad(supply_amount_words(supply, units), amount_width),
                        wrap(where, style.width - note_column, note_column));
  }
  return text;
}

}  // namespace slabtide
