#include <algorithm>
#include <array>
#include <optional>
#include <regex>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

#include "redrawn.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "support/random_job.h"

// The slab knows nothing of clocks: in a night in which they change, the slab of a plan has the
// same instants and figures as in a time zone of the same offset whose clocks go on. What waits for
// the hour at which people come is left out: washing off, washing, sealing, and the crew's day with
// what it costs.

namespace slabtide::test {

namespace {

using Json = nlohmann::json;

/// tools/check plans 300.
const int jobs = static_cast<int>(job_count(40));

struct ChangingNight {
  std::string_view day_before;
  std::string_view steady_zone;  ///< America/Chicago's offset on that day
};
constexpr std::array<ChangingNight, 2> nights{
    {{"2026-03-07", "Etc/GMT+6"}, {"2026-10-31", "Etc/GMT+5"}}};

std::string with_line(const std::string& toml, const std::string& key, const std::string& value) {
  return std::regex_replace(toml, std::regex("\n" + key + " = [^\n]*"), "\n" + key + " = " + value);
}

std::string on_the_night(std::string toml, const ChangingNight& night, std::string_view zone) {
  toml = with_line(toml, "date", std::string(night.day_before));
  toml = with_line(toml, "latitude", "41.9");
  toml = with_line(toml, "longitude", "-87.6");
  return with_line(toml, "time_zone", fmt::format("\"{}\"", zone));
}

/// Whether what the file says by the clock means the same; after the change it does not.
bool has_the_same_instants(const Job& one, const Job& other) {
  return one.pour.start == other.pour.start &&
         std::ranges::equal(one.zones, other.zones, {}, &Zone::placed_at, &Zone::placed_at) &&
         std::ranges::equal(one.pour.covers, other.pour.covers, [](const Cover& a, const Cover& b) {
           return a.from == b.from && a.to == b.to;
         });
}

/// The time of an RFC 3339 text on a clock of offset zero; empty for any other value.
std::optional<LocalTime> instant_of(const Json& value) {
  if (!value.is_string()) return std::nullopt;
  const auto parsed = parse_instant(value.get<std::string>());
  if (!parsed || !parsed->offset) return std::nullopt;
  return parsed->local - *parsed->offset;
}

/// Whether the value at this pointer depends on the hours at which people work.
bool waits_for_people(const std::string& pointer, const Json& flat) {
  if (pointer.starts_with("/crew") || pointer.starts_with("/cost")) return true;
  // Somebody leads the saw: its cuts are made when the crew comes to them.
  if (pointer.starts_with("/saw/") || pointer.find("/joints/sawing/") != std::string::npos) {
    return !pointer.ends_with("/latest") && !pointer.ends_with("/due");
  }
  const std::string operation = pointer.substr(0, pointer.rfind('/')) + "/operation";
  if (!flat.contains(operation)) return false;
  const Json& what = flat[operation];
  return what == "expose" || what == "wash" || what == "seal";
}

/// Without what is said of people's hours: a crew that is late with what comes next morning, a
/// wash-off that cannot wait for it.
Json without_people(Json plan) {
  const auto drop = [](Json& list, const auto& is_dropped) {
    list.erase(std::remove_if(list.begin(), list.end(), is_dropped), list.end());
  };
  drop(plan["cautions"], [](const Json& one) {
    const std::string code = one["code"];
    return code == "wash_off_hours" || code == "late_crew" || code.starts_with("saw_");
  });
  drop(plan["verdict"]["reasons"], [](const Json& one) {
    return one == "wash-off after hours" || one == "crew too small" ||
           one == "crew too late for the finish";
  });
  return plan;
}

/// The instants and figures that differ.
std::vector<std::string> differences(const Json& changing, const Json& steady) {
  std::vector<std::string> found;
  const Json flat = changing.flatten();
  const Json other = steady.flatten();
  for (const auto& [pointer, value] : flat.items()) {
    if (waits_for_people(pointer, flat)) continue;
    if (!other.contains(pointer)) {
      found.push_back(pointer + " is missing");
      continue;
    }
    const Json& twin = other[pointer];
    if (value.is_number() ? value != twin : instant_of(value) != instant_of(twin)) {
      found.push_back(fmt::format("{}: {} against {}", pointer, value.dump(), twin.dump()));
    }
  }
  return found;
}

}  // namespace

TEST_CASE("a night in which the clocks change moves no instant of a plan") {
  std::vector<std::string> faults;
  int planned = 0;
  for (std::uint64_t seed = 30001; planned < jobs; ++seed) {
    const std::string toml = random_job_toml(seed);
    if (!is_quick(toml)) continue;
    const ChangingNight& night = nights.at(seed % nights.size());
    const Parsed<Job> changing = read_job(on_the_night(toml, night, "America/Chicago"));
    const Parsed<Job> steady = read_job(on_the_night(toml, night, night.steady_zone));
    if (!changing.ok() || !steady.ok()) continue;
    if (!has_the_same_instants(*changing.value, *steady.value)) continue;
    const Job& job = *steady.value;
    const Forecast forecast =
        high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date);
    const auto first = plan_json(*changing.value, forecast, 0);
    const auto second = plan_json(job, forecast, 0);
    REQUIRE(first.has_value() == second.has_value());
    if (!first) continue;
    ++planned;
    for (const std::string& fault :
         differences(without_people(Json::parse(*first)), without_people(Json::parse(*second)))) {
      faults.push_back(fmt::format("seed {}: {}", seed, fault));
    }
  }
  INFO(fmt::format("{} faults\n{}", faults.size(), fmt::join(faults, "\n")));
  CHECK(faults.empty());
}

}  // namespace slabtide::test
