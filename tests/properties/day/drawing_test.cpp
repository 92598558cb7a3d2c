#include <algorithm>
#include <array>

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

bool in_si(const std::string& toml) { return toml.find("units = \"si\"") != std::string::npos; }

std::string as_it_is(std::string toml) { return toml; }

}  // namespace

TEST_CASE("a plan does not depend on where the drawing's origin lies") {
  constexpr std::array<Point, 4> by_ft{
      {{137.31, -52.07}, {0.1 / 12.0, 0.1 / 12.0}, {900.0, 900.0}, {-0.77, 311.9}}};
  std::size_t turn = 0;
  const auto moved = [&](const std::string& toml) {
    Point by = by_ft.at(turn++ % by_ft.size());
    constexpr double m_per_ft = 0.3048;
    if (in_si(toml)) by = {by.x_m * m_per_ft, by.y_m * m_per_ft};
    Expected expected;
    const double m = in_si(toml) ? 1.0 : m_per_ft;
    expected.moved = [=](Point p) { return Point{p.x_m + m * by.x_m, p.y_m + m * by.y_m}; };
    const auto shift = [=](Point p) { return Point{p.x_m + by.x_m, p.y_m + by.y_m}; };
    return std::pair(with_points(toml, shift), expected);
  };
  const auto faults = faults_of_jobs(1, jobs, as_it_is, moved);
  INFO(shown(faults));
  CHECK(faults.empty());
}

TEST_CASE("a plan does not depend on which way the drawing lies") {
  int turn = 0;
  const auto turned_drawing = [&](const std::string& toml) {
    const int quarters = 1 + turn++ % 3;
    Expected expected;
    expected.turned = true;
    expected.moved = [quarters](Point p) {
      for (int i = 0; i < quarters; ++i) p = {p.y_m, -p.x_m};
      return p;
    };
    return std::pair(turned(toml, quarters), expected);
  };
  const auto faults = faults_of_jobs(10001, jobs, ready_to_turn, turned_drawing);
  INFO(shown(faults));
  CHECK(faults.empty());
}

}  // namespace slabtide::test
