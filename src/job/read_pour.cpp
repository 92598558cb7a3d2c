#include "read_pour.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "slabtide/core/text.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr Range transits_min{0.0, 240.0};
constexpr Range hauls_m{0.0, m_from_ft(1000.0)};
constexpr Range placing_rates_m3_h{m3_from_yd3(0.5), m3_from_yd3(300.0)};
constexpr Range crews{1.0, 60.0};
/// Up to four thick insulated blankets.
constexpr Range resistances_m2k_w{m2k_w_from_r_us(0.1), m2k_w_from_r_us(40.0)};

constexpr auto haulings = std::to_array<Word<Hauling>>({{"chute", Hauling::chute},
                                                        {"buggy", Hauling::motor_buggy},
                                                        {"wheelbarrow", Hauling::wheelbarrow}});
constexpr auto saw_kinds =
    std::to_array<Word<SawKind>>({{"early-entry", SawKind::early_entry}, {"wet", SawKind::wet}});
constexpr auto curings = std::to_array<Word<CuringKind>>({{"none", CuringKind::none},
                                                          {"film", CuringKind::film},
                                                          {"plastic", CuringKind::plastic},
                                                          {"blanket", CuringKind::blanket}});
constexpr auto cover_kinds = std::to_array<Word<CuringKind>>(
    {{"plastic", CuringKind::plastic}, {"blanket", CuringKind::blanket}});

std::string names_of(const std::vector<std::string>& zones) {
  return fmt::format("the zones are {}", fmt::join(zones, ", "));
}

/// The names; empty where one of them is not that of a zone or comes twice.
std::optional<std::vector<std::string>> zone_names(TableReader& table, std::string_view key,
                                                   const std::vector<std::string>& zones) {
  const std::vector<std::string_view> candidates(zones.begin(), zones.end());
  std::vector<std::string> names;
  bool faulty = false;
  for (const auto& [name, where] : table.texts(key)) {
    const bool known = std::find(zones.begin(), zones.end(), name) != zones.end();
    const bool again = std::find(names.begin(), names.end(), name) != names.end();
    if (!known) {
      const auto meant = nearest(name, candidates);
      table.error_at(where, key, fmt::format("there is no zone \"{}\"", name),
                     meant ? fmt::format("did you mean \"{}\"?", *meant) : names_of(zones));
    } else if (again) {
      table.error_at(where, key, fmt::format("names the zone \"{}\" twice", name));
    }
    faulty = faulty || !known || again;
    names.push_back(name);
  }
  if (faulty) return std::nullopt;
  return names;
}

std::vector<std::string> read_zone_order(TableReader& table,
                                         const std::vector<std::string>& zones) {
  const auto order = zone_names(table, "zone_order", zones);
  if (!order || !table.has("zone_order")) return zones;
  for (const auto& zone : zones) {
    if (std::find(order->begin(), order->end(), zone) != order->end()) continue;
    table.error("zone_order", fmt::format("leaves out the zone \"{}\"", zone),
                "name every zone once, or leave zone_order out to place them as they are listed");
  }
  return *order;
}

void read_haul(TableReader& table, Pour& pour) {
  set(pour.hauling, table.word("hauling", haulings));
  pour.haul_distance_m = table.quantity("haul_distance", length_quantity, hauls_m);
  pour.placing_rate_m3_h =
      table.quantity("placing_rate", placing_rate_quantity, placing_rates_m3_h);
  if (pour.haul_distance_m && pour.hauling == Hauling::chute) {
    table.warning("haul_distance", "has no effect: the chute reaches the forms",
                  R"(name the hauling, "buggy" or "wheelbarrow", or leave the distance out)");
  } else if (pour.haul_distance_m && pour.placing_rate_m3_h) {
    table.warning("haul_distance", "has no effect: the placing rate is given");
  }
}

Cover read_cover(TableReader& table, const Pour& pour, const PourDay& day,
                 const std::vector<std::string>& zones) {
  Cover cover;
  set(cover.kind, table.word("kind", cover_kinds, Presence::required));
  const auto resistance = table.quantity("r_value", insulation_quantity, resistances_m2k_w);
  set(cover.resistance_m2k_w, resistance);
  if (cover.kind == CuringKind::blanket && !table.has("r_value")) {
    table.error("", "a blanket needs its `r_value`",
                "it is on the label; insulated blankets have about 3 to 7");
  }
  cover.from = pour.start;
  set(cover.from, read_time_after(table, "from", day, pour.start));
  cover.to = cover.from + boost::posix_time::hours(24);
  set(cover.to, read_time_after(table, "to", day, cover.from));
  if (cover.to <= cover.from) table.error("to", "ends before the cover is put on");
  set(cover.zones, zone_names(table, "zones", zones));
  return cover;
}

}  // namespace

Pour read_pour(TableReader& table, const TimeZone& zone, const std::vector<std::string>& zones) {
  Pour pour;
  pour.date = read_date(table, "date", Presence::required).value_or(Date(2026, 1, 1));
  const PourDay day{pour.date, zone};
  pour.start = UtcTime(pour.date, Duration(0, 0, 0));
  set(pour.start, read_time(table, "start", day, Presence::required));
  set(pour.transit_min, table.quantity("transit", minutes_quantity, transits_min));
  read_haul(table, pour);
  set(pour.placing_crew, table.whole_number("placing_crew", crews));
  pour.zone_order = read_zone_order(table, zones);
  pour.saws = table.words("saws", saw_kinds);
  set(pour.curing, table.word("curing", curings));
  table.in_each("cover", [&](TableReader& cover) {
    pour.covers.push_back(read_cover(cover, pour, day, zones));
  });
  return pour;
}

}  // namespace slabtide
