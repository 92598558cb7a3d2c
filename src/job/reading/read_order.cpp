#include "read_order.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "job/toml/job_words.h"
#include "read_admixture.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

LoadNote read_load(TableReader& table) {
  LoadNote load;
  set(load.number, table.whole_number("number", limits::load_numbers));
  if (!table.has("number"))
    table.error("", "which load? its `number` is missing", "loads count from 1");
  auto admixtures = read_own_admixtures(table);
  if (!admixtures && !table.has("admixture") && !table.has("admixtures")) {
    table.error("", "says nothing of the load's admixtures",
                "write [[order.load.admixture]] tables, or `admixtures = []` for none");
  }
  set(load.admixtures, std::move(admixtures));
  return load;
}

void read_loads(TableReader& table, Order& order) {
  table.in_each("load", [&](TableReader& each) {
    auto load = read_load(each);
    const bool again =
        std::any_of(order.loads.begin(), order.loads.end(),
                    [&](const LoadNote& earlier) { return earlier.number == load.number; });
    if (again) each.error("number", fmt::format("load {} is already there", load.number));
    order.loads.push_back(std::move(load));
  });
}

}  // namespace

Order read_order(TableReader& table) {
  Order order;
  set(order.allowance_fraction, table.quantity("allowance", fraction_quantity, limits::allowances));
  set(order.low_base_m, table.quantity("low_base", thickness_quantity, limits::low_bases_m));
  set(order.load_size_m3, table.quantity("load_size", volume_quantity, limits::loads_m3));
  set(order.short_load_m3, table.quantity("short_load", volume_quantity, limits::short_loads_m3));
  set(order.discharge_limit_min,
      table.quantity("discharge_limit", minutes_quantity, limits::discharge_limits_min));
  order.truck_spacing_min = table.quantity("truck_spacing", minutes_quantity, limits::spacings_min);
  read_loads(table, order);
  return order;
}

}  // namespace slabtide
