#include "slabtide/day/plan/outcome.h"

#include <doctest/doctest.h>

namespace slabtide {
namespace {

Caution caution_of(const char* code, CautionLevel level) {
  Caution caution;
  caution.code = code;
  caution.level = level;
  caution.loss = loss_of(code);
  return caution;
}

Outcome stops(const char* code) { return outcome_of({caution_of(code, CautionLevel::stop)}); }
Outcome cautions(const char* code) { return outcome_of({caution_of(code, CautionLevel::caution)}); }

TEST_CASE("a stop weighs more than any number of cautions") {
  std::vector<Caution> many;
  for (const char* code : {"cold_weather", "crust", "early_sheen", "evaporation_caution", "dark"}) {
    many.push_back(caution_of(code, CautionLevel::caution));
  }
  CHECK(better(outcome_of(many), stops("late_crew")));
  CHECK_FALSE(better(stops("late_crew"), outcome_of(many)));
}

TEST_CASE("of one level the slab weighs more than the finish, then cracks, money and comfort") {
  CHECK(better(stops("late_crew"), stops("rain")));
  CHECK(better(stops("rain"), stops("thunder")));  // people before all
  CHECK(better(cautions("crust"), cautions("cold_weather")));
  CHECK(better(cautions("evaporation_caution"), cautions("crust")));
  CHECK(better(cautions("short_load"), cautions("evaporation_caution")));
  CHECK(better(cautions("dark"), cautions("short_load")));
  CHECK(better(outcome_of({}), cautions("dark")));
}

TEST_CASE("the same thing at several places counts once, and notes do not count") {
  const auto crust = caution_of("crust", CautionLevel::caution);
  const Outcome twice = outcome_of({crust, crust, caution_of("dew", CautionLevel::note)});
  CHECK_FALSE(better(cautions("crust"), twice));
  CHECK_FALSE(better(twice, cautions("crust")));
  CHECK(twice.cautions[static_cast<std::size_t>(Loss::finish)] == 1);
  // A stop and a caution of one code are two things.
  const Outcome both = outcome_of({crust, caution_of("crust", CautionLevel::stop)});
  CHECK(both.stops[static_cast<std::size_t>(Loss::finish)] == 1);
  CHECK(both.cautions[static_cast<std::size_t>(Loss::finish)] == 1);
}

}  // namespace
}  // namespace slabtide
