#include "read_prices.h"

#include "job/checks/check_currency.h"

namespace slabtide {

namespace {

void read_currency(TableReader& table, Prices& prices) {
  if (table.units() == UnitSystem::us) prices.currency = "$";
  const auto currency = table.text("currency");
  if (!currency) return;
  if (const auto fault = currency_fault(*currency)) {
    table.error("currency", *fault, R"(write a sign or a code, such as "$" or "CAD")");
    return;
  }
  prices.currency = *currency;
}

}  // namespace

Prices read_prices(TableReader& table) {
  Prices prices;
  read_currency(table, prices);
  const auto price = [&table](std::string_view key, const Quantity& kind) {
    return table.quantity(key, kind, limits::prices);
  };
  prices.hand_per_h = table.number("hand_per_hour", limits::prices, "money an hour");
  prices.concrete_per_m3 = price("concrete", price_per_volume_quantity);
  prices.short_load = table.number("short_load", limits::prices, "money a load");
  prices.retarder_per_l = price("retarder", price_per_liquid_quantity);
  prices.accelerator_per_l = price("accelerator", price_per_liquid_quantity);
  prices.chloride_per_kg = price("chloride", price_per_mass_quantity);
  prices.ice_per_kg = price("ice", price_per_mass_quantity);
  prices.hot_water_per_m3 = price("hot_water", price_per_volume_quantity);
  prices.chilled_water_per_m3 = price("chilled_water", price_per_volume_quantity);
  prices.plastic_per_m2 = price("plastic", price_per_area_quantity);
  prices.blankets_per_m2 = price("blankets", price_per_area_quantity);
  prices.film_per_m2 = price("evaporation_film", price_per_area_quantity);
  prices.redo_per_m2 = price("redo", price_per_area_quantity);
  prices.repair_per_m = price("crack_repair", price_per_length_quantity);
  return prices;
}

}  // namespace slabtide
