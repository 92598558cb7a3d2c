#include "slabtide/job/reading/read_job.h"

#include <algorithm>
#include <array>
#include <span>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "job/checks/check_zones.h"
#include "job/checks/load_runs.h"
#include "job/checks/validate.h"
#include "job/geometry/placing_sequence.h"
#include "job/toml/table_reader.h"
#include "job/toml/times.h"
#include "job/toml/toml_tree.h"
#include "read_finish_work.h"
#include "read_hand.h"
#include "read_mix.h"
#include "read_obstacle.h"
#include "read_option.h"
#include "read_order.h"
#include "read_pour.h"
#include "read_prices.h"
#include "read_site.h"
#include "read_weather.h"
#include "read_zone.h"
#include "slabtide/job/geometry/canonical.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

constexpr auto unit_systems =
    std::to_array<Word<UnitSystem>>({{"us", UnitSystem::us}, {"si", UnitSystem::si}});

/// The zones' names, read before the zones, because the pour refers to zones by name and a zone
/// needs the pour's day. Invalid names are left to `read_zone`.
std::vector<std::string> names_of_zones(const TomlTable& root) {
  const TomlEntry* const zones = find(root, "zone");
  const auto* const list = zones == nullptr ? nullptr : std::get_if<TomlArray>(&zones->value.held);
  if (list == nullptr) return {};
  std::vector<std::string> names;
  for (const auto& zone : std::span(*list).first(std::min(list->size(), limits::max_zones))) {
    const auto* const table = std::get_if<TomlTable>(&zone.held);
    const TomlEntry* const name = table == nullptr ? nullptr : find(*table, "name");
    if (name == nullptr) continue;
    if (const auto* const text = std::get_if<std::string>(&name->value.held)) {
      names.push_back(*text);
    }
  }
  return names;
}

/// Where the file says when placing begins.
struct StartPlaces {
  SourcePosition start;
  std::optional<SourcePosition> zone_order;  ///< if it is given
  std::vector<SourcePosition> placed_at;     ///< one entry per zone
  std::vector<SourcePosition> after;         ///< likewise
};

/// No zone may be placed before the first one; the finding points at both times.
void refuse_before_first(const Job& job, std::size_t first, const StartPlaces& places,
                         std::vector<Diagnostic>& findings) {
  const UtcTime begins = *job.zones[first].placed_at;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    if (!job.zones[i].placed_at || !(*job.zones[i].placed_at < begins)) continue;
    findings.push_back({Severity::error, fmt::format("zone[{}].placed_at", i + 1),
                        fmt::format("is before the first zone, \"{}\", which is placed at {}",
                                    job.zones[first].name, clock_of(job).time(begins)),
                        places.placed_at[i], places.placed_at[first],
                        "put the zones into the order they are placed in with `zone_order`"});
  }
}

/// The pour begins with its first zone. If that zone has its own time, this becomes the pour's
/// start, and it must be on the pour's day.
void start_with_first_zone(Job& job, const StartPlaces& places, std::vector<Diagnostic>& findings) {
  if (job.pour.placing_sequence.empty() || job.pour.start.is_special()) return;
  const auto first = std::find_if(job.zones.begin(), job.zones.end(), [&job](const Zone& zone) {
    return zone.name == job.pour.placing_sequence.front();
  });
  if (first == job.zones.end() || !first->placed_at || *first->placed_at <= job.pour.start) return;
  const auto index = static_cast<std::size_t>(first - job.zones.begin());
  const Clock clock = clock_of(job);
  const Date day = clock.day(*first->placed_at);
  if (day != job.pour.date) {
    findings.push_back(
        {Severity::error, fmt::format("zone[{}].placed_at", index + 1),
         fmt::format("the first zone is placed on {}, the pour starts on {}",
                     clock.date(*first->placed_at), shown_date(job.pour.date, clock.style)),
         places.placed_at[index], places.start,
         "give the pour the day on which its first zone is placed"});
    return;
  }
  findings.push_back({Severity::warning, "pour.start",
                      fmt::format("has no effect: the first zone, \"{}\", is placed at {}",
                                  first->name, clock.time(*first->placed_at)),
                      places.start, places.placed_at[index],
                      "leave one of the two hours out, or give both the same"});
  job.pour.start = *first->placed_at;
  refuse_before_first(job, index, places, findings);
}

/// Zones that come after others are moved behind them, unless the file gives the order itself: then
/// it must agree.
void place_after(Job& job, const StartPlaces& places, std::vector<Diagnostic>& findings) {
  const auto early = placed_too_early(job.pour.placing_sequence, job.zones);
  if (!early) return;
  std::vector<std::string> due = in_due_order(job.pour.placing_sequence, job.zones);
  if (!places.zone_order && !due.empty()) {
    job.pour.placing_sequence = std::move(due);
    return;
  }
  const auto zone = std::find_if(job.zones.begin(), job.zones.end(),
                                 [&](const Zone& one) { return one.name == early->zone; });
  const auto index = static_cast<std::size_t>(zone - job.zones.begin());
  findings.push_back(
      {Severity::error, fmt::format("zone[{}].after", index + 1),
       due.empty()
           ? fmt::format(R"("{}" and "{}" wait for each other)", early->zone, early->after)
           : fmt::format(R"(`zone_order` places "{}" before "{}")", early->zone, early->after),
       places.after[index], due.empty() ? std::nullopt : places.zone_order,
       due.empty() ? "take one of the two out of `after`"
                   : "fix the order, or leave `zone_order` out to have it worked out"});
}

void read_zones(TableReader& root, Job& job, const std::vector<std::string>& names,
                StartPlaces starts, std::vector<Diagnostic>& findings) {
  const PourDay day{job.pour.date, clock_of(job)};
  std::vector<ZonePlaces> places;
  const auto read = [&](TableReader& table) {
    job.zones.push_back(read_zone(table, day, job.pour.start, names));
    starts.after.push_back(table.where("after"));
    starts.placed_at.push_back(table.where("placed_at"));
    places.push_back({table.where("name"), table.where(table.has("path") ? "path" : "outline")});
  };
  root.in_each("zone", read, Presence::required, limits::max_zones);
  for (auto& finding : check_zones(job.zones, places, job.units)) {
    findings.push_back(std::move(finding));
  }
  place_after(job, starts, findings);
  start_with_first_zone(job, starts, findings);
}

void read_obstacles(TableReader& root, Job& job) {
  root.in_each("obstacle",
               [&](TableReader& table) { job.obstacles.push_back(read_obstacle(table)); });
}

/// Positions of the numbers in [[order.load]], one per load; empty if there are none.
std::vector<SourcePosition> places_of_loads(const TomlTable& root) {
  const TomlEntry* const order = find(root, "order");
  const auto* const table = order == nullptr ? nullptr : std::get_if<TomlTable>(&order->value.held);
  const TomlEntry* const loads = table == nullptr ? nullptr : find(*table, "load");
  const auto* const list = loads == nullptr ? nullptr : std::get_if<TomlArray>(&loads->value.held);
  std::vector<SourcePosition> places;
  if (list == nullptr) return places;
  for (const TomlValue& load : *list) {
    const TomlEntry* const number = find(std::get<TomlTable>(load.held), "number");
    places.push_back(number == nullptr ? load.where : number->value.where);
  }
  return places;
}

/// Admixtures for a load that never comes would silently be lost. The number of loads is known only
/// for a job without other errors.
void check_loads(const Job& job, const TomlTable& root, std::vector<Diagnostic>& findings) {
  if (job.order.loads.empty() || has_error(findings)) return;
  const std::vector<SourcePosition> places = places_of_loads(root);
  const std::size_t count = load_count(job);
  for (std::size_t i = 0; i < job.order.loads.size(); ++i) {
    const int number = job.order.loads[i].number;
    if (number <= static_cast<int>(count)) continue;
    findings.push_back(
        {Severity::error, fmt::format("order.load[{}].number", i + 1),
         fmt::format("got {}, but the pour takes {} load{}", number, count, count == 1 ? "" : "s"),
         i < places.size() ? std::optional(places[i]) : std::nullopt, std::nullopt,
         "loads count from 1; slabtide plan lists them"});
  }
}

void keep_practice(TableReader& root, const TomlTable& tree, std::string_view text, Job& job) {
  const TomlEntry* const entry = root.entry("practice");
  if (entry == nullptr) return;
  const auto* const table = std::get_if<TomlTable>(&entry->value.held);
  if (table == nullptr || !table->has_header) {
    root.error("practice", "expected tables with headers such as [practice.operation.stamp]",
               "write a header, and the keys below it");
    return;
  }
  job.practice_overrides_toml = cut_out("practice", tree, text);
  job.practice_where = table->where;
}

/// How many hours the clock has that times are shown by.
std::optional<HourCount> read_hours(TableReader& root) {
  const TomlEntry* const entry = root.entry("clock");
  if (entry == nullptr) return std::nullopt;
  const auto hours = parse_hour_count(shown(entry->value));
  if (!hours) {
    root.error("clock", fmt::format("got {}, expected 12 or 24", shown(entry->value)),
               "12 shows 1:30 PM, 24 shows 13:30; without it US units use 12");
  }
  return hours;
}

/// Reads the tables in an order that gives each one what it needs from earlier ones.
Job read_tables(TableReader& root, const TomlTable& tree, std::string_view text,
                const TimeZoneLoader& load_time_zone, std::vector<Diagnostic>& findings) {
  Job job;
  StartPlaces starts;
  bool curing_is_given = false;
  job.units = root.units();
  job.hours = read_hours(root);
  set(job.name, root.text("name", Presence::required));
  const auto required = Presence::required;
  root.in_table(
      "site", [&](TableReader& table) { job.site = read_site(table, load_time_zone); }, required);
  if (job.site.name.empty()) job.site.name = job.name;
  root.in_table(
      "pour",
      [&](TableReader& table) {
        job.pour = read_pour(table, clock_of(job), names_of_zones(tree));
        starts.start = table.where("start");
        if (table.has("zone_order")) starts.zone_order = table.where("zone_order");
        curing_is_given = table.has("curing");
      },
      required);
  root.in_table(
      "weather", [&](TableReader& table) { job.weather = read_weather(table); }, required);
  root.in_table(
      "mix", [&](TableReader& table) { job.mix = read_mix(table); }, required);
  root.in_table("order", [&](TableReader& table) { job.order = read_order(table); });
  job.crew = read_crew(root);
  root.in_table("finish_work", [&](TableReader& table) {
    job.finish_work = read_finish_work(table);
    cure_with_sealer(table, job, curing_is_given);
  });
  root.in_table("prices", [&](TableReader& table) { job.prices = read_prices(table); });
  root.in_each("option", [&](TableReader& table) {
    job.options.push_back(read_option(table, names_of_zones(tree)));
  });
  read_zones(root, job, names_of_zones(tree), std::move(starts), findings);
  read_obstacles(root, job);
  keep_practice(root, tree, text, job);
  return job;
}

/// The system of units, which everything else needs.
std::optional<UnitSystem> read_units(const TomlTable& tree, std::vector<Diagnostic>& findings) {
  TableReader root(tree, "", UnitSystem::us, findings);
  const auto units = root.word("units", unit_systems);
  if (!units && root.has("units")) return std::nullopt;
  return units.value_or(UnitSystem::us);
}

Diagnostic nothing_to_read() {
  return {Severity::error, "",           "the file is empty",
          std::nullopt,    std::nullopt, "`slabtide starter` writes a job file to start from"};
}

/// A drawing that only just meets a limit may fail it once places are rounded to the micrometre.
std::optional<Diagnostic> drawing_fault(const Job& job) {
  try {
    validate(job);
  } catch (const std::invalid_argument& fault) {
    Diagnostic finding;
    finding.key = "zone";
    finding.message = fmt::format("cannot be planned as it is drawn: {}", fault.what());
    finding.where = job.zones.front().where;
    finding.next_step = "draw it a little larger or smaller, or give it fewer points";
    return finding;
  }
  return std::nullopt;
}

}  // namespace

Parsed<Job> read_job(std::string_view text, const TimeZoneLoader& load_time_zone) {
  auto tree = read_toml(text);
  if (!tree.ok()) return {std::nullopt, std::move(tree.diagnostics)};
  if (tree.value->entries.empty()) return {std::nullopt, {nothing_to_read()}};
  std::vector<Diagnostic> findings;
  const auto units = read_units(*tree.value, findings);
  if (!units) return {std::nullopt, std::move(findings)};
  TableReader root(*tree.value, "", *units, findings);
  root.entry("units");
  Job job = read_tables(root, *tree.value, text, load_time_zone, findings);
  root.refuse_the_rest();
  check_loads(job, *tree.value, findings);
  if (has_error(findings)) return {std::nullopt, std::move(findings)};
  job = canonical(std::move(job));
  if (auto fault = drawing_fault(job)) {
    findings.push_back(std::move(*fault));
    return {std::nullopt, std::move(findings)};
  }
  return {std::move(job), std::move(findings)};
}

Parsed<Job> read_job(std::string_view text) {
  return read_job(text, [](std::string_view name) { return TimeZone::load(name); });
}

}  // namespace slabtide
