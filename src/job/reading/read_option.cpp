#include "read_option.h"

#include <algorithm>
#include <array>

#include "job/toml/job_words.h"
#include "read_admixture.h"
#include "zone_names.h"

namespace slabtide {

namespace {

/// The keys that change something; an option without any of them equals the job as it stands.
constexpr std::array changes{"start_shift", "finishers",    "admixture",  "admixtures",
                             "zone_order",  "shaded_zones", "wind_ratio", "saws"};

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
  if (std::none_of(changes.begin(), changes.end(),
                   [&](const char* key) { return table.has(key); })) {
    table.error("", "changes nothing", "name one thing to change, such as `start_shift = -60`");
  }
  return option;
}

}  // namespace slabtide
