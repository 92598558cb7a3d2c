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
  CHECK(stakes.stop_count() == 3);
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
