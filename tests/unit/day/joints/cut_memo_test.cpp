#include "day/joints/cut_memo.h"

#include <random>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"
#include "support/sample_job.h"

// What is kept from plan to plan must change no order.

namespace slabtide {
namespace {

/// Tied to the house by its west end, with an inside corner: corners, tied edge and longest run all
/// have joints of their own.
Job tied_porch_job() {
  const double ft = m_from_ft(1);
  Zone porch = test::zone_named("porch", {{0, 0},
                                          {40 * ft, 0},
                                          {40 * ft, 12 * ft},
                                          {18 * ft, 12 * ft},
                                          {18 * ft, 22 * ft},
                                          {0, 22 * ft}});
  porch.tied = true;
  Job job = test::sample_job({porch});
  Obstacle house;
  house.name = "house";
  house.from = {0, -3};
  house.to = {0, 9};
  job.obstacles = {house};
  return job;
}

/// As pours of one job differ: the same places, reached or ready in another order.
std::vector<JointTurn> some_turns(std::size_t joints, std::minstd_rand& engine) {
  std::vector<JointTurn> turns;
  for (std::size_t i = 0; i < joints; ++i) {
    turns.push_back({static_cast<double>(engine() % 5), static_cast<double>(engine() % 7)});
  }
  return turns;
}

void check_same(const std::vector<Cut>& a, const std::vector<Cut>& b) {
  REQUIRE(a.size() == b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    CHECK(a[i].joint.from == b[i].joint.from);
    CHECK(a[i].joint.to == b[i].joint.to);
    CHECK(a[i].length_m == b[i].length_m);
    CHECK(a[i].reason == b[i].reason);
    CHECK(a[i].piece.uncut_length_m == b[i].piece.uncut_length_m);
    CHECK(a[i].piece.tied == b[i].piece.tied);
    CHECK(a[i].piece.re_entrant_corner == b[i].piece.re_entrant_corner);
  }
}

TEST_CASE("an order is the same with the orders of other pours kept") {
  const Job job = tied_porch_job();
  const Zone& porch = job.zones[0];
  const ZoneJoints joints = plan_joints(porch, job, default_practice().joints);
  REQUIRE(joints.joints.size() > 5);
  CutMemo memo({joints});
  std::minstd_rand engine(7);
  for (int pour = 0; pour < 60; ++pour) {
    const auto turns = some_turns(joints.joints.size(), engine);
    const std::vector<Cut> plain = order_cuts(porch, joints, turns);
    check_same(memo.order_cuts(0, porch, turns), plain);
    check_same(memo.order_cuts(0, porch, turns), plain);  // now kept
  }
}

TEST_CASE("a course is followed as far as it goes the same way") {
  const Job job = tied_porch_job();
  const Zone& porch = job.zones[0];
  const ZoneJoints joints = plan_joints(porch, job, default_practice().joints);
  std::minstd_rand engine(11);
  const auto turns = some_turns(joints.joints.size(), engine);
  const auto course =
      std::make_shared<const CutCourse>(course_of_cuts(porch, joints, turns, CutCourses()));
  REQUIRE(course->joints.size() == joints.joints.size());
  CutCourses known({course});
  CHECK(known.take(course->joints[0]) == &course->cuts[0]);
  CHECK(known.take(course->joints[0]) == nullptr);
  CHECK(known.middle() == nullptr);
  CHECK(known.take(course->joints[1]) == nullptr);
}

TEST_CASE("a zone that the memo does not have is refused") {
  const Job job = tied_porch_job();
  CutMemo memo({});
  CHECK_THROWS_AS(memo.order_cuts(0, job.zones[0], {}), std::out_of_range);
}

}  // namespace
}  // namespace slabtide
