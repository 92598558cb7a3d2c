#include <doctest/doctest.h>

#include "published/published_row.h"
#include "slabtide/core/units.h"
#include "slabtide/day/practice/practice.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_crew_rates {

// The published figures are a series in which each finish includes the ones before it; ours are for
// a single pass, at 167, 250 and 500 ft2 per hour.

TEST_CASE("a pass of floating and of brooming makes up the published figures") {
  constexpr Published rates{.what = "finished by one person",
                            .source = "person-hours a 1000 ft², as data/practice.toml says",
                            .tolerance = 0.5,
                            .unit = "ft²/h"};
  const CrewPractice crew = default_practice().crew;
  const auto hours_per_ft2 = [&crew](TaskKind kind) {
    return 1.0 / ft2_from_m2(crew.rule(kind).rate_per_person_h);
  };
  const double floated = hours_per_ft2(TaskKind::screed) + hours_per_ft2(TaskKind::float_work);
  check_row(rates, "screed, bull float and float", 100.0, 1.0 / floated);
  check_row(rates, "the same and broom", 83.0, 1.0 / (floated + hours_per_ft2(TaskKind::broom)));
}

}  // namespace published_crew_rates
