#include "read_pour.h"

#include <array>

#include <fmt/format.h>

#include "job/model/covers.h"
#include "job/toml/job_words.h"
#include "slabtide/core/units.h"
#include "zone_names.h"

namespace slabtide {

namespace {

constexpr auto haulings = std::to_array<Word<Hauling>>({{"chute", Hauling::chute},
                                                        {"buggy", Hauling::motor_buggy},
                                                        {"wheelbarrow", Hauling::wheelbarrow},
                                                        {"pump", Hauling::pump}});
constexpr auto curings = std::to_array<Word<CuringKind>>({{"none", CuringKind::none},
                                                          {"film", CuringKind::film},
                                                          {"plastic", CuringKind::plastic},
                                                          {"blanket", CuringKind::blanket}});
constexpr auto cover_kinds = std::to_array<Word<CuringKind>>(
    {{"plastic", CuringKind::plastic}, {"blanket", CuringKind::blanket}});

void read_haul(TableReader& table, Pour& pour) {
  set(pour.hauling, table.word("hauling", haulings));
  pour.haul_distance_m = table.quantity("haul_distance", length_quantity, limits::hauls_m);
  pour.placing_rate_m3_h =
      table.quantity("placing_rate", placing_rate_quantity, limits::placing_rates_m3_h);
  const bool pumped = pour.hauling == Hauling::pump;
  if (pour.haul_distance_m && (pumped || pour.hauling == Hauling::chute)) {
    table.warning("haul_distance",
                  fmt::format("has no effect: the {} reaches the forms", pumped ? "hose" : "chute"),
                  R"(name the hauling, "buggy" or "wheelbarrow", or leave the distance out)");
  } else if (pour.haul_distance_m && pour.placing_rate_m3_h) {
    table.warning("haul_distance", "has no effect: the placing rate is given");
  }
}

Cover read_cover(TableReader& table, const Pour& pour, const PourDay& day,
                 const std::vector<std::string>& zones) {
  Cover cover;
  set(cover.kind, table.word("kind", cover_kinds, Presence::required));
  const auto resistance = table.quantity("r_value", insulation_quantity, limits::resistances_m2k_w);
  set(cover.resistance_m2k_w, resistance);
  if (cover.kind == CuringKind::blanket && !table.has("r_value")) {
    table.error("", "a blanket needs its `r_value`",
                "it is on the label; insulated blankets have about 3 to 7");
  }
  cover.from = pour.start;
  set(cover.from, read_time_after(table, "from", day, pour.start));
  cover.to = cover.from + boost::posix_time::hours(24);
  const auto to = read_time_after(table, "to", day, cover.from);
  set(cover.to, to);
  if (to && !cover.from.is_special() && *to <= cover.from) {
    table.error("to", "ends before the cover is put on");
  }
  set(cover.zones, read_zone_names(table, "zones", zones));
  return cover;
}

/// The weather, the sun and the plan's wording follow the date, so the start must be on that day.
void refuse_another_day(TableReader& table, const Pour& pour, const Clock& clock) {
  if (pour.date.is_special() || pour.start.is_special()) return;
  const Date day = clock.zone.local_from_utc(pour.start).date();
  if (day == pour.date) return;
  table.error("start",
              fmt::format("is on {}, the pour's date is {}", clock.date(pour.start),
                          shown_date(pour.date, clock.style)),
              "give both the same day; just the time will do for `start`", table.where("date"));
}

/// Warns of a cover that lies on a zone while it is placed, which cannot be intended.
void warn_of_cover_while_placing(TableReader& cover, const Cover& read, const Pour& pour) {
  const bool known = !read.from.is_special() && !pour.start.is_special() && !read.to.is_special();
  if (!known || read.from > pour.start || read.to <= pour.start) return;
  cover.warning(cover.has("from") ? "from" : "",
                fmt::format("the {} is on from the start of placing: nobody can place or finish "
                            "under it",
                            cover_words(read.kind)),
                "say with `from` when it is laid, after the last finishing");
}

}  // namespace

Pour read_pour(TableReader& table, const Clock& clock, const std::vector<std::string>& zones) {
  Pour pour;
  set(pour.date, read_date(table, "date", Presence::required));
  const PourDay day{pour.date, clock};
  set(pour.start, read_time(table, "start", day, Presence::required));
  refuse_another_day(table, pour, clock);
  set(pour.transit_min, table.quantity("transit", minutes_quantity, limits::transits_min));
  read_haul(table, pour);
  set(pour.placing_crew, table.whole_number("placing_crew", limits::crew_sizes));
  pour.placing_sequence = read_placing_sequence(table, zones);
  if (pour.placing_sequence.empty()) pour.placing_sequence = zones;
  pour.saws = table.words("saws", saw_kinds);
  set(pour.curing, table.word("curing", curings));
  constexpr auto cover_keys = std::to_array<std::string_view>({"kind", "r_value", "from", "to"});
  table.refuse_without_header("cover", cover_keys);
  table.in_each("cover", [&](TableReader& cover) {
    pour.covers.push_back(read_cover(cover, pour, day, zones));
    warn_of_cover_while_placing(cover, pour.covers.back(), pour);
  });
  return pour;
}

}  // namespace slabtide
