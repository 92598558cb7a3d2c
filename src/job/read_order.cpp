#include "read_order.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "job_words.h"
#include "read_admixture.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr Range allowances{0.0, 0.3};
constexpr Range low_bases_m{0.0, m_from_in(3.0)};
/// A trailer mixer to the largest truck.
constexpr Range loads_m3{m3_from_yd3(0.5), m3_from_yd3(15.0)};
constexpr Range short_loads_m3{0.0, m3_from_yd3(15.0)};
constexpr Range discharge_limits_min{30.0, 480.0};
constexpr Range spacings_min{1.0, 480.0};
constexpr Range load_numbers{1.0, 500.0};
constexpr Range arrivals_min{0.0, 480.0};

LoadNote read_load(TableReader& table) {
  LoadNote load;
  set(load.number, table.whole_number("number", load_numbers));
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
    if (again) each.error("number", fmt::format("load {} is there already", load.number));
    order.loads.push_back(std::move(load));
  });
}

}  // namespace

Order read_order(TableReader& table) {
  Order order;
  set(order.allowance_share, table.quantity("allowance", share_quantity, allowances));
  set(order.low_base_m, table.quantity("low_base", thickness_quantity, low_bases_m));
  set(order.load_size_m3, table.quantity("load_size", volume_quantity, loads_m3));
  set(order.short_load_m3, table.quantity("short_load", volume_quantity, short_loads_m3));
  set(order.discharge_limit_min,
      table.quantity("discharge_limit", minutes_quantity, discharge_limits_min));
  order.truck_spacing_min = table.quantity("truck_spacing", minutes_quantity, spacings_min);
  read_loads(table, order);
  return order;
}

Crew read_crew(TableReader& table) {
  Crew crew;
  set(crew.finishers, table.whole_number("finishers", crew_sizes));
  set(crew.arrive_before_min, table.quantity("arrive_before", minutes_quantity, arrivals_min));
  return crew;
}

}  // namespace slabtide
