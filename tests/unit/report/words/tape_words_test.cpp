#include "report/words/tape_words.h"

#include <doctest/doctest.h>

#include "support/sample_job.h"

namespace slabtide {
namespace {

constexpr double tape_foot_m = 0.3048;  // exact, by definition of the foot

Joint feet(double x0, double y0, double x1, double y1) {
  return {{x0 * tape_foot_m, y0 * tape_foot_m}, {x1 * tape_foot_m, y1 * tape_foot_m}};
}

/// A slab of 20 by 12 ft with its south-west corner at the origin.
Job tape_job() {
  return test::sample_job(
      {test::zone_named("pad", test::rectangle(0, 0, 20 * tape_foot_m, 12 * tape_foot_m))});
}

}  // namespace

TEST_CASE("lengths as a tape reads them") {
  CHECK(tape_length_words(14 * tape_foot_m, UnitSystem::us) == "14 ft");
  CHECK(tape_length_words(14.25 * tape_foot_m, UnitSystem::us) == "14 ft 3 in");
  CHECK(tape_length_words(13.99 * tape_foot_m, UnitSystem::us) == "14 ft");
  CHECK(tape_length_words(0.5 * tape_foot_m, UnitSystem::us) == "6 in");
  CHECK(tape_length_words(4.267, UnitSystem::si) == "4.27 m");
}

TEST_CASE("a cut is measured from the end with a structure, then a neighbor, then by compass") {
  Job job = tape_job();
  const Joint across = feet(14, 0, 14, 12);
  const Joint along = feet(0, 5, 20, 5);
  CHECK(tape_words(across, 0, job) == "6 ft from the east end");
  CHECK(tape_words(along, 0, job) == "7 ft from the north end");
  job.zones.push_back(test::zone_named(
      "walk", test::rectangle(-4 * tape_foot_m, 0, 4 * tape_foot_m, 12 * tape_foot_m)));
  CHECK(tape_words(across, 0, job) == "14 ft from the walk end");
  Obstacle house;
  house.name = "house";
  house.from = feet(20, -5, 20, 40).from;
  house.to = feet(20, -5, 20, 40).to;
  job.obstacles.push_back(house);
  CHECK(tape_words(across, 0, job) == "6 ft from the house end");
  CHECK(tape_words(feet(14, 12, 14, 0), 0, job) == "6 ft from the house end");
}

TEST_CASE("a cut across a walkway is measured along its middle, around its bends") {
  Job job = tape_job();
  Zone walk = test::zone_named("walk", test::rectangle(30 * tape_foot_m, 0, 1.0, 1.0));
  walk.path = Walkway{{feet(30, 0, 50, 0).from, feet(30, 0, 50, 0).to, feet(50, 20, 0, 0).from},
                      4 * tape_foot_m};
  job.zones.push_back(walk);
  CHECK(tape_words(feet(40, -2, 40, 2), 1, job) == "10 ft from the west end");
  CHECK(tape_words(feet(48, 15, 52, 15), 1, job) == "35 ft from the west end");
}

}  // namespace slabtide
