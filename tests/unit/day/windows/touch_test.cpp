#include <cmath>

#include <doctest/doctest.h>

#include "slabtide/day/windows/touch.h"

namespace slabtide {

namespace {

/// Two cells of 1 and 3 m2 whose resistance grows tenfold per hour, the second an hour behind. The
/// grid starts at 08:07, seven minutes after a quarter hour.
struct TwoCells {
  PourRun run;
  ZoneRun zone;
  PartPlan part;

  TwoCells() {
    run.weather.grid.start = UtcTime(Date(2026, 5, 14), boost::posix_time::minutes(8 * 60 + 7));
    run.weather.grid.step_s = 300.0;
    run.weather.grid.count = 12 * 24;
    for (const double behind_h : {0.0, 1.0}) run.histories.push_back(history(behind_h));
    zone.cells.resize(2);
    zone.cells[0].cell.area_m2 = 1.0;
    zone.cells[1].cell.area_m2 = 3.0;
    zone.cells[1].history = 1;
    part.cells = {0, 1};
    OperationWindow stamp;
    stamp.opens = run.at(3600.0);
    stamp.closes = run.at(2.0 * 3600.0);
    stamp.closed_all_over = run.at(2.5 * 3600.0);
    part.windows = {stamp};
  }

  static ColumnHistory history(double behind_h) {
    ColumnHistory history;
    for (double at_s = 0.0; at_s < 24.0 * 3600.0; at_s += 60.0) {
      history.time_s.push_back(at_s);
      history.resistance_work_psi.push_back(std::pow(10.0, at_s / 3600.0 - behind_h));
    }
    return history;
  }
};

}  // namespace

TEST_CASE("the typical resistance is the geometric mean over the area") {
  const TwoCells two;
  // 100 psi on a quarter of it, 10 on the rest: 10^(0.25 * 2 + 0.75 * 1).
  CHECK(typical_resistance_psi(two.part, two.zone, two.run, 2.0 * 3600.0) ==
        doctest::Approx(std::pow(10.0, 1.25)));
}

TEST_CASE("the touch goes from light to last call between the thresholds") {
  const ResistanceWindow window{40.0, 300.0, true};
  const TouchRules rules{1.6, 0.7};
  CHECK(touch_at(10.0, false, window, rules) == Touch::wait);
  CHECK(touch_at(50.0, false, window, rules) == Touch::wait);  // the sheen is still there
  CHECK(touch_at(35.0, true, window, rules) == Touch::light);  // its first tenth is ready
  CHECK(touch_at(63.9, true, window, rules) == Touch::light);
  CHECK(touch_at(64.1, true, window, rules) == Touch::full);
  CHECK(touch_at(211.0, true, window, rules) == Touch::last_call);
  CHECK(touch_at(300.0, true, window, rules) == Touch::gone);
  CHECK(touch_at(300.0, false, window, rules) == Touch::gone);
}

TEST_CASE("the touch is told at whole quarters of the clock, from the wait to the end") {
  const TwoCells two;
  const auto touches =
      touch_of({{&two.part, Operation::stamp}}, two.zone, two.run, default_practice());
  REQUIRE(touches.size() == 1);
  const auto& quarters = touches[0].quarters;
  REQUIRE(!quarters.empty());
  // Opens 09:07, gone by 10:37.
  CHECK(quarters.front().at.time_of_day() == boost::posix_time::hours(9));
  CHECK(quarters.front().touch == Touch::wait);
  CHECK(quarters.back().at.time_of_day() == boost::posix_time::minutes(10 * 60 + 45));
  for (const TouchAt& quarter : quarters) {
    CHECK(quarter.at.time_of_day().minutes() % 15 == 0);
    CHECK(quarter.resistance_psi > 0.0);
  }
  for (std::size_t i = 1; i < quarters.size(); ++i) {
    CHECK(quarters[i].touch >= quarters[i - 1].touch);
  }
}

TEST_CASE("a zone none of whose parts opens has nothing to tell") {
  TwoCells two;
  two.part.windows[0].opens.reset();
  CHECK(touch_of({{&two.part, Operation::stamp}}, two.zone, two.run, default_practice()).empty());
}

}  // namespace slabtide
