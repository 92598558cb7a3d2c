#include "day/compare/own_days.h"

#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/job/reading/read_job.h"
#include "support/planned_day.h"

// A choice with a pour of its own is tried on a few days, which put right what the windows of the
// job as ordered tell when they are moved. The slow way is to plan that pour as a job and to solve
// it on all days.

namespace slabtide {
namespace {

constexpr std::size_t all_days = 200;

Job hot_demo() {
  std::ifstream file(SLABTIDE_SOURCE_DIR "/data/demo/hot.toml");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  return read_job(text).value.value();
}

struct Told {
  double lost_fraction;
  double expected_late_min;
};

Told told(const ChoiceFigures& figures) {
  return {figures.lost_fraction.value(), figures.expected_late_min};
}

}  // namespace

TEST_CASE("few days of its own put a choice as near as all of them would") {
  const test::PlannedDay ordered(hot_demo());
  const Ensemble ensemble = sampled_days(ordered.pour(), {all_days, 0, {}});
  const SampledDays drawn{ordered.plan(), ensemble};
  double by_moving = 0.0;
  double put_right = 0.0;
  for (const double hours : {-2.0, -1.0, 1.0, 2.0}) {
    Job job = ordered.job();
    job.pour.start = after_seconds(job.pour.start, hours * seconds_per_hour);
    const test::PlannedDay other(job, ordered.forecast());
    const Ensemble solved = sampled_days(other.pour(), {all_days, 0, {}});
    const Told exact = told(figures_of(job, other.plan(), SampledDays{other.plan(), solved}));
    const auto own = OwnDays::solve(job, other.forecast(), other.practice(), other.run(),
                                    other.plan(), ensemble);
    REQUIRE(own);
    CHECK(own->days().ensemble.days.size() == OwnDays::usual_days);
    const Told quick = told(figures_of(job, other.plan(), drawn, own->days()));
    const Told moved = told(figures_of(job, other.plan(), drawn));
    CAPTURE(hours);
    CHECK(std::abs(quick.lost_fraction - exact.lost_fraction) < 0.05);
    CHECK(std::abs(quick.expected_late_min - exact.expected_late_min) < 5.0);
    by_moving += std::abs(moved.lost_fraction - exact.lost_fraction);
    put_right += std::abs(quick.lost_fraction - exact.lost_fraction);
  }
  MESSAGE("fraction of days lost, off on average: moved ", by_moving / 4.0, ", put right ",
          put_right / 4.0);
  CHECK(put_right < 0.5 * by_moving);
}

TEST_CASE("the same pour on the same days comes out as it did") {
  const test::PlannedDay ordered(hot_demo());
  const Ensemble ensemble = sampled_days(ordered.pour(), {4, 0, {}});
  const auto own = OwnDays::solve(ordered.job(), ordered.forecast(), ordered.practice(),
                                  ordered.run(), ordered.plan(), ensemble);
  REQUIRE(own);
  CHECK(own->days().ensemble.days.size() == 4);
  const ChoiceFigures as_drawn =
      figures_of(ordered.job(), ordered.plan(), SampledDays{ordered.plan(), ensemble});
  const ChoiceFigures again =
      figures_of(ordered.job(), ordered.plan(), SampledDays{ordered.plan(), ensemble}, own->days());
  CHECK(again.expected_late_min == doctest::Approx(as_drawn.expected_late_min));
  CHECK(again.lost_fraction.value() == doctest::Approx(as_drawn.lost_fraction.value()));
}

}  // namespace slabtide
