#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <hwy/targets.h>

#include "slab/column/column_solver.h"
#include "slab/mix/mix_model.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::fixtures;

namespace {

/// Makes the columns use a single instruction set while it exists.
class OnlyTarget {
 public:
  explicit OnlyTarget(std::int64_t target) {
    hwy::SetSupportedTargetsForTest(target);
    hwy::GetChosenTarget().DeInit();
  }
  ~OnlyTarget() {
    hwy::SetSupportedTargetsForTest(0);
    hwy::GetChosenTarget().DeInit();
  }
  OnlyTarget(const OnlyTarget&) = delete;
  OnlyTarget& operator=(const OnlyTarget&) = delete;
};

std::vector<std::int64_t> targets_here() {
  std::vector<std::int64_t> targets;
  for (std::int64_t left = hwy::SupportedTargets(); left != 0; left &= left - 1) {
    targets.push_back(left & -left);
  }
  return targets;
}

double farthest(const std::vector<double>& a, const std::vector<double>& b) {
  double max = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    max = std::max(max, std::abs(a[i] - b[i]) / std::max(1.0, std::abs(a[i])));
  }
  return max;
}

}  // namespace

TEST_CASE("every instruction set of this machine gives the same columns to the bit") {
  const Day day{.hours = 36.0};
  const SiteWeather weather = day_weather(day);
  const CellExposure sun = in_the_sun(weather, day.start_hour, 850.0);
  const CellExposure shade = in_the_shade(weather, 0.6);
  const MixModel mix = mix_model(Mix{}, {});
  std::vector<ColumnCase> cases;
  for (int i = 0; i < 11; ++i) {
    cases.push_back(slab_on_gravel(mix, i % 2 == 0 ? sun : shade, 20.0, 0.1 + 0.01 * i));
    cases.back().formed_face = i % 4 == 3;
    if (i % 3 == 0) cases.back().covers = {{9000.0, 20000.0 + 600.0 * i, 0.2, true}};
  }
  const auto usual = solve_columns(cases, weather, {});
  for (const std::int64_t target : targets_here()) {
    const OnlyTarget only(target);
    const auto found = solve_columns(cases, weather, {});
    double max = 0.0;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      REQUIRE(found[i].time_s.size() == usual[i].time_s.size());
      max = std::max({max, farthest(usual[i].surface_c, found[i].surface_c),
                      farthest(usual[i].gradient_c, found[i].gradient_c),
                      farthest(usual[i].bleed_water_kg_m2, found[i].bleed_water_kg_m2),
                      farthest(usual[i].resistance_work_psi, found[i].resistance_work_psi),
                      farthest(usual[i].strength_psi, found[i].strength_psi)});
    }
    MESSAGE(std::string(hwy::TargetName(target)), ": apart by ", max);
    CHECK(max == 0.0);
  }
}
