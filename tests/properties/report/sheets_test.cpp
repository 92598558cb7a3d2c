#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"
#include "report/files/calendar_events.h"
#include "slabtide/day/crew/sawing.h"
#include "slabtide/report/text/text_crew.h"
#include "slabtide/report/text/text_plan.h"
#include "slabtide/report/text/text_saw.h"
#include "slabtide/request/plan/plan_request.h"
#include "support/random_job.h"

// What the sheets of one plan tell about the same thing must be the same, and must be readable at
// any width. Random jobs, the same ones each time.

namespace slabtide {

namespace {

constexpr int jobs = 50;

/// Names as long as people give them, by the turn of the zone.
std::string long_name(std::size_t turn) {
  constexpr std::array<std::string_view, 4> names{
      "Courtyard slab north of the dining terra", "Garage apron beside the neighbor's fence",
      "Walk from the side gate to kitchen steps", "Pad"};
  return fmt::format("{}{}", names[turn % names.size()],
                     turn < names.size() ? std::string() : fmt::format(" {}", turn));
}

void rename_zones(Job& job, std::string (*name_of)(std::size_t turn)) {
  std::map<std::string, std::string> renamed;
  for (std::size_t i = 0; i < job.zones.size(); ++i) renamed[job.zones[i].name] = name_of(i);
  const auto rename = [&renamed](std::string& name) {
    const auto found = renamed.find(name);
    if (found != renamed.end()) name = found->second;
  };
  for (Zone& zone : job.zones) {
    rename(zone.name);
    for (std::string& over : zone.reached_over) rename(over);
  }
  for (std::string& name : job.pour.placing_sequence) rename(name);
  for (Cover& cover : job.pour.covers) {
    for (std::string& name : cover.zones) rename(name);
  }
}

std::string short_name(std::size_t turn) { return fmt::format("z{}", turn); }

/// The random job of this seed, its zones called so; empty if it cannot be planned.
std::optional<PlannedPour> planned(std::uint64_t seed,
                                   std::string (*name_of)(std::size_t turn) = nullptr) {
  const auto system_zone = [](std::string_view name) { return TimeZone::load(name); };
  const Sources sources = sources_in_memory({{"job.toml", test::random_job_toml(seed)}},
                                            system_zone, UtcTime(Date(2026, 5, 13)));
  std::ostringstream findings;
  auto loaded = load_job({.path = "job.toml"}, sources, findings);
  if (!loaded) return std::nullopt;
  if (name_of != nullptr) rename_zones(loaded->job, name_of);
  return plan_loaded(std::move(*loaded), findings);
}

/// The lines of a text that are wider than it should be.
std::vector<std::string> too_wide(const std::string& text, std::size_t width) {
  std::vector<std::string> found;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (display_width(line) > width) found.push_back(line);
  }
  return found;
}

/// The text with every stretch of white space as one space.
std::string on_one_line(const std::string& text) {
  std::istringstream words(text);
  std::string line;
  for (std::string word; words >> word;) line += (line.empty() ? "" : " ") + word;
  return line;
}

std::size_t times_in(const std::string& text, const std::string& name) {
  std::size_t times = 0;
  for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + 1)) {
    ++times;
  }
  return times;
}

/// What a block of the headline says, its lines joined.
std::string headline_entry(const std::string& text, const std::string& heading) {
  std::istringstream lines(text);
  std::string entry;
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with(heading)) {
      entry = line.substr(heading.size());
    } else if (!entry.empty()) {
      if (!line.starts_with("           ")) break;
      entry += line.substr(10);
    }
  }
  entry.erase(0, entry.find_first_not_of(' '));
  return entry;
}

}  // namespace

TEST_CASE("the headline's saw is the cut list's first, and the cut due first is due by its hour") {
  int compared = 0;
  for (std::uint64_t seed = 7000; compared < jobs; ++seed) {
    REQUIRE(seed < 7000 + 20 * jobs);
    const auto pour = planned(seed, short_name);
    if (!pour) continue;
    const DayPlan& plan = pour->plan;
    // By hand from the lists: the earliest start in a zone that is cut with that saw.
    std::optional<UtcTime> starts;
    std::optional<UtcTime> due;
    std::size_t first = 0;
    for (const SawKind kind : kinds_of_saw) {
      for (const SawnCut& sawn : worked_shift(kind, plan.cuts, plan.crew).cuts) {
        const JointWay way = plan.cuts.choices[plan.cuts.cuts[sawn.cut].zone].way;
        const JointWay own = kind == SawKind::early_entry ? JointWay::early_entry : JointWay::wet;
        if (way != own) continue;
        const auto latest = plan.cuts.cuts[sawn.cut].latest;
        if (latest && (!due || *latest < *due)) due = latest;
        if (starts && *starts <= sawn.starts) continue;
        starts = sawn.starts;
        first = sawn.cut;
      }
    }
    if (!starts) continue;
    ++compared;
    const PlannedCut& cut = plan.cuts.cuts[first];
    const std::string told = headline_entry(text_plan(*pour, {}), "First saw");
    CAPTURE(seed);
    CAPTURE(told);
    const std::string begins =
        fmt::format("{}, cut at {}", pour->job.zones[cut.zone].name, day_clock(*starts, pour->job));
    CHECK(told.find(begins) != std::string::npos);
    if (due) CHECK(told.find(" by " + day_clock(*due, pour->job)) != std::string::npos);
  }
}

TEST_CASE("a finisher's calendar has the saw at the crew's hours, and only for who saws") {
  int sawing = 0;
  for (std::uint64_t seed = 7000; seed < 7000 + jobs; ++seed) {
    const auto pour = planned(seed);
    if (!pour) continue;
    const CrewPlan& crew = pour->plan.crew;
    for (const CrewMember& member : crew.people) {
      std::optional<UtcTime> saws_from;
      for (const CrewVisit& visit : member.visits) {
        for (const std::size_t task : visit.tasks) {
          if (crew.tasks[task].kind != TaskKind::saw) continue;
          saws_from = std::min(crew.starts[task], saws_from.value_or(crew.starts[task]));
        }
      }
      std::optional<UtcTime> told;
      for (const CalendarEvent& event : calendar_events(*pour, {.finisher = member.name})) {
        if (event.category == "saw") told = std::min(event.starts, told.value_or(event.starts));
      }
      CAPTURE(seed);
      CAPTURE(member.name);
      CHECK(told == saws_from);
      if (told) ++sawing;
    }
  }
  CHECK(sawing > 0);
}

TEST_CASE("long names fit any terminal, and no cut's place is cut short") {
  int compared = 0;
  for (std::uint64_t seed = 8000; compared < jobs; ++seed) {
    REQUIRE(seed < 8000 + 20 * jobs);
    const auto pour = planned(seed, long_name);
    if (!pour) continue;
    ++compared;
    for (const std::size_t width : {60UL, 70UL, 80UL}) {
      const TextStyle style{.width = width};
      CAPTURE(seed);
      CAPTURE(width);
      for (const auto& sheet : {text_plan(*pour, style), text_crew(*pour, style)}) {
        for (const std::string& line : too_wide(sheet, width)) FAIL_CHECK(line);
      }
      const std::string saw = text_saw(*pour, style);
      for (const std::string& line : too_wide(saw, width)) FAIL_CHECK(line);
      const std::string joined = on_one_line(saw);
      for (std::size_t zone = 0; zone < pour->job.zones.size(); ++zone) {
        // In the list of the zones and, where it is cut, in that of the cuts.
        const std::string& name = pour->job.zones[zone].name;
        const bool is_cut = std::any_of(pour->plan.cuts.cuts.begin(), pour->plan.cuts.cuts.end(),
                                        [zone](const PlannedCut& cut) { return cut.zone == zone; });
        CAPTURE(name);
        const std::size_t seen = times_in(joined, name);
        CHECK(seen >= (is_cut ? 2U : 1U));
      }
    }
  }
}

}  // namespace slabtide
