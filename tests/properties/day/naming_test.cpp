#include <algorithm>

#include <doctest/doctest.h>
#include <fmt/ranges.h>

#include "redrawn.h"
#include "support/random_job.h"
#include "support/redrawn_job.h"

// A plan depends on the slab, not on how its drawing is written down: the drawing's origin, its
// orientation, the order of the zones in the file, or their names. Every figure of the plan must be
// the same to the digits printed. Seeds are fixed, so the jobs are the same each time.

namespace slabtide::test {

namespace {

/// tools/check plans 300.
const int jobs = static_cast<int>(job_count(75));

std::string shown(const std::vector<std::string>& faults) {
  return fmt::format("{} of {} jobs\n{}", faults.size(), jobs, fmt::join(faults, "\n"));
}

/// The text without quotes and escapes.
std::string unquoted(const std::string& toml) {
  std::string text;
  for (std::size_t i = 1; i + 1 < toml.size(); ++i) {
    if (toml[i] == '\\') ++i;
    text += toml[i];
  }
  return text;
}

std::string as_it_is(std::string toml) { return toml; }

}  // namespace

TEST_CASE("a plan does not depend on the order of the zones' tables") {
  const auto reversed = [](const std::string& toml) {
    return std::pair(zones_reversed(toml), Expected{});
  };
  const auto faults = faults_of_jobs(20001, jobs, with_zone_order, reversed);
  INFO(shown(faults));
  CHECK(faults.empty());
}

TEST_CASE("a plan does not depend on what its zones are called") {
  bool longer = false;
  const auto with_names = [&](const std::string& toml) {
    const std::vector<std::string> names = names_of(toml);
    std::vector<std::string> sorted = names;
    std::sort(sorted.begin(), sorted.end());
    longer = !longer;
    Renaming names_to;
    for (const std::string& name : names) {
      const auto place = std::find(sorted.begin(), sorted.end(), name) - sorted.begin();
      std::string to = fmt::format("zq{}", 9 - place);
      to.append(longer ? 20 : name.size() > to.size() + 2 ? name.size() - to.size() - 2 : 0, 'x');
      names_to.emplace_back(name, to);
    }
    Expected expected;
    expected.read_back = [=](const std::string& text) {
      std::string back = text;
      for (const auto& [from, to] : names_to) {
        for (std::size_t at = back.find(to); at != std::string::npos; at = back.find(to)) {
          back.replace(at, to.size(), unquoted(from));
        }
      }
      return back;
    };
    return std::pair(renamed(toml, names_to), expected);
  };
  const auto faults = faults_of_jobs(30001, jobs, as_it_is, with_names);
  INFO(shown(faults));
  CHECK(faults.empty());
}

}  // namespace slabtide::test
