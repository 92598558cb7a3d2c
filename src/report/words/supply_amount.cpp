#include "supply_amount.h"

#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Rounded up to a multiple of `step`, ignoring rounding errors in `amount`.
std::string enough(double amount, double step, std::string_view unit) {
  constexpr double rounding = 1e-9;
  return fmt::format("{:g} {}", std::ceil(amount / step - rounding) * step, unit);
}

}  // namespace

std::string supply_amount_words(const Supply& supply, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  constexpr double half = 0.5;
  switch (supply_unit(supply.kind)) {
    case SupplyUnit::m3:
      return sold_words(supply.amount, units);
    case SupplyUnit::kg:
      return us ? enough(lb_from_kg(supply.amount), 1.0, "lb") : enough(supply.amount, half, "kg");
    case SupplyUnit::l:
      return us ? enough(gal_from_l(supply.amount), half, "gal") : enough(supply.amount, 1.0, "L");
    case SupplyUnit::m2:
      return us ? enough(ft2_from_m2(supply.amount), 1.0, "ft²") : enough(supply.amount, 1.0, "m²");
  }
  return {};
}

bool tells_low_base(const OrderPlan& order) { return order.low_base_m3 >= m3_from_yd3(0.05); }

}  // namespace slabtide
