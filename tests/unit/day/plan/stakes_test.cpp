#include "slabtide/day/plan/stakes.h"

#include <stdexcept>

#include <doctest/doctest.h>

namespace slabtide {
namespace {

Caution caution(const char* code, CautionLevel level, const char* zone = "") {
  Caution one;
  one.code = code;
  one.level = level;
  one.loss = loss_of(code);
  one.zone = zone;
  return one;
}

TEST_CASE("stops are counted by what is lost") {
  const Stakes stakes = stakes_of({caution("freezing", CautionLevel::stop, "pad"),
                                   caution("freezing", CautionLevel::stop, "walk"),
                                   caution("saw_too_late", CautionLevel::stop, "pad")},
                                  2);
  CHECK(stakes.stops == std::array<int, loss_count>{0, 2, 0, 1, 0, 0});
  CHECK(stakes.caution_cost == 0.0);
}

TEST_CASE("a caution weighs by its loss and by the share of the zones it is of") {
  const auto cost = [](std::vector<Caution> cautions) {
    return stakes_of(cautions, 4).caution_cost;
  };
  const double crack = caution_cost(Loss::crack);
  CHECK(cost({caution("dry_air", CautionLevel::note)}) == 0.0);
  CHECK(cost({caution("evaporation_caution", CautionLevel::caution, "pad")}) ==
        doctest::Approx(0.25 * crack));
  // Two parts of a zone are one zone.
  CHECK(cost({caution("evaporation_caution", CautionLevel::caution, "pad, east"),
              caution("evaporation_caution", CautionLevel::caution, "pad, west"),
              caution("evaporation_caution", CautionLevel::caution, "walk")}) ==
        doctest::Approx(0.5 * crack));
  CHECK(cost({caution("hot_weather", CautionLevel::caution)}) == doctest::Approx(crack));
  // Lateness itself is weighed by its minutes.
  CHECK(cost({caution("short_window", CautionLevel::caution)}) < caution_cost(Loss::finish));
  CHECK(caution_cost(Loss::slab) > caution_cost(Loss::finish));
  CHECK(caution_cost(Loss::crack) > caution_cost(Loss::comfort));
}

TEST_CASE("a stop weighs more than any number of cautions") {
  std::vector<Caution> many;
  for (const char* code : {"cold_weather", "crust", "early_sheen", "evaporation_caution", "dark"}) {
    many.push_back(caution(code, CautionLevel::caution));
  }
  const Stakes late = stakes_of({caution("late_crew", CautionLevel::stop)}, 1);
  CHECK(better(stakes_of(many, 1), late));
  CHECK_FALSE(better(late, stakes_of(many, 1)));
}

TEST_CASE("of one level the slab weighs more than the finish, then cracks, money and comfort") {
  const auto stops = [](const char* code) {
    return stakes_of({caution(code, CautionLevel::stop)}, 1);
  };
  const auto cautions = [](const char* code) {
    return stakes_of({caution(code, CautionLevel::caution)}, 1);
  };
  CHECK(better(stops("late_crew"), stops("rain")));
  CHECK(better(stops("rain"), stops("thunder")));  // people before all
  CHECK(better(cautions("crust"), cautions("cold_weather")));
  CHECK(better(cautions("evaporation_caution"), cautions("crust")));
  CHECK(better(cautions("short_load"), cautions("evaporation_caution")));
  CHECK(better(cautions("dark"), cautions("short_load")));
  CHECK(better(stakes_of({}, 1), cautions("dark")));
}

TEST_CASE("the same caution at several places is one thing, and a stop and a caution are two") {
  const auto crust = caution("crust", CautionLevel::caution, "pad");
  const auto finish = static_cast<std::size_t>(Loss::finish);
  CHECK(stakes_of({crust, caution("crust", CautionLevel::caution, "walk")}, 2).cautions[finish] ==
        1);
  const Stakes both = stakes_of({crust, caution("crust", CautionLevel::stop)}, 2);
  CHECK(both.stops[finish] == 1);
  CHECK(both.cautions[finish] == 1);
}

TEST_CASE("the worst is of the highest level, then the worst loss") {
  CHECK(!worst_loss({caution("silica", CautionLevel::note)}));
  CHECK(worst_loss({caution("dark", CautionLevel::caution),
                    caution("rain", CautionLevel::caution)}) == Loss::slab);
  CHECK(worst_loss({caution("rain", CautionLevel::caution),
                    caution("saw_too_late", CautionLevel::stop)}) == Loss::crack);
}

TEST_CASE("a job without a zone has no stakes") {
  CHECK_THROWS_AS(stakes_of({}, 0), std::invalid_argument);
}

}  // namespace
}  // namespace slabtide
