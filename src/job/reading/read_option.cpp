#include "read_option.h"

#include <algorithm>
#include <array>

#include "job/toml/job_words.h"
#include "read_admixture.h"
#include "zone_names.h"

namespace slabtide {

namespace {

/// The keys that change something; an option without any of them equals the job as it stands.
constexpr std::array changes{"start_shift",
                             "finishers",
                             "admixture",
                             "admixtures",
                             "zone_order",
                             "shaded_zones",
                             "wind_ratio",
                             "saws",
                             "load",
                             "load_size",
                             "truck_spacing",
                             "own_truck",
                             "curing",
                             "concrete_temperature",
                             "evaporation_film",
                             "r_value"};

constexpr auto option_curings = std::to_array<Word<CuringKind>>({{"none", CuringKind::none},
                                                                 {"film", CuringKind::film},
                                                                 {"plastic", CuringKind::plastic},
                                                                 {"blanket", CuringKind::blanket}});

/// How long a zone's own truck waits where the option does not say (ours).
constexpr double usual_truck_wait_min = 60.0;

void read_admixture_change(TableReader& table, const std::vector<std::string>& zones,
                           OptionNote& option) {
  option.admixtures = read_own_admixtures(table);
  option.last_loads = table.whole_number("last_loads", limits::load_numbers);
  set(option.admixture_zones, read_zone_names(table, "admixture_zones", zones));
  table.refuse_both("last_loads", "admixture_zones");
  if (table.has("admixture") || table.has("admixtures")) return;
  for (const auto* const key : {"last_loads", "admixture_zones"}) {
    if (!table.has(key)) continue;
    table.error(key, "says where, but not which admixture goes there",
                "write [[option.admixture]] tables, or `admixtures = []` for none");
  }
}

void read_option_load(TableReader& table, OptionNote& option) {
  LoadNote load;
  set(load.number, table.whole_number("number", limits::load_numbers));
  if (!table.has("number"))
    table.error("", "which load? its `number` is missing", "loads count from 1");
  const auto admixtures = read_own_admixtures(table);
  if (!admixtures && !table.has("admixture") && !table.has("admixtures")) {
    table.error("", "says nothing of the load's admixtures",
                "write [[option.load.admixture]] tables, or `admixtures = []` for none");
  }
  set(load.admixtures, admixtures);
  const auto& loads = option.loads;
  if (std::any_of(loads.begin(), loads.end(),
                  [&load](const LoadNote& other) { return other.number == load.number; })) {
    table.error("number", "this load is already there");
  }
  option.loads.push_back(std::move(load));
}

void read_trucks(TableReader& table, const std::vector<std::string>& zones, OptionNote& option) {
  option.load_size_m3 = table.quantity("load_size", volume_quantity, limits::loads_m3);
  option.truck_spacing_min =
      table.quantity("truck_spacing", minutes_quantity, limits::spacings_min);
  const auto wait_min = table.quantity("truck_wait", minutes_quantity, limits::spacings_min);
  table.in_each("load", [&option](TableReader& each) { read_option_load(each, option); });
  const auto named = read_zone_names(table, "own_truck", zones);
  if (named && named->size() > 1) {
    table.error("own_truck", "names more than one zone", "one zone can have a truck of its own");
  } else if (named && !named->empty()) {
    option.own_truck = OwnTruck{named->front(), wait_min.value_or(usual_truck_wait_min)};
  }
  if (wait_min && !table.has("own_truck")) {
    table.error("truck_wait", "says how long, but not which zone waits",
                "name the zone: `own_truck = \"walk\"`");
  }
}

void read_concrete_and_curing(TableReader& table, OptionNote& option) {
  option.concrete_c =
      table.quantity("concrete_temperature", temperature_quantity, limits::discharges_c);
  option.curing = table.word("curing", option_curings);
  option.curing_blanket_m2k_w =
      table.quantity("r_value", insulation_quantity, limits::resistances_m2k_w);
  if (option.curing_blanket_m2k_w && option.curing && *option.curing != CuringKind::blanket) {
    table.error("r_value", "is of blankets, and the option cures otherwise",
                "write `curing = \"blanket\"`, or leave the `r_value` out");
  }
  option.evaporation_film = table.yes_no("evaporation_film");
}

}  // namespace

OptionNote read_option(TableReader& table, const std::vector<std::string>& zones) {
  OptionNote option;
  set(option.name, table.text("name", Presence::required));
  option.start_shift_min =
      table.quantity("start_shift", minutes_quantity, limits::start_shifts_min);
  option.finishers = table.whole_number("finishers", limits::crew_sizes);
  read_admixture_change(table, zones, option);
  option.placing_sequence = read_placing_sequence(table, zones);
  set(option.shaded_zones, read_zone_names(table, "shaded_zones", zones));
  option.wind_ratio = table.number("wind_ratio", limits::wind_ratios, "times the wind at 10 m");
  option.saws = table.words("saws", saw_kinds);
  read_trucks(table, zones, option);
  read_concrete_and_curing(table, option);
  if (std::none_of(changes.begin(), changes.end(),
                   [&](const char* key) { return table.has(key); })) {
    table.error("", "changes nothing", "name one thing to change, such as `start_shift = -60`");
  }
  return option;
}

}  // namespace slabtide
