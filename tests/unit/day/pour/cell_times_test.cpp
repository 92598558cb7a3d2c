#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "slabtide/day/pour/cell_times.h"

namespace slabtide {

namespace {

Practice practice_with_sheen(double limit_kg_m2, double grace_min) {
  Practice practice = default_practice();
  practice.sheen.bleed_water_gone_kg_m2 = limit_kg_m2;
  practice.sheen.grace_min = grace_min;
  return practice;
}

/// Ten-minute entries; resistance starts at 5 psi and doubles with every entry.
ColumnHistory doubling_history(const std::vector<double>& film, const std::vector<double>& bleed) {
  ColumnHistory history;
  double psi = 5.0;
  for (std::size_t i = 0; i < film.size(); ++i) {
    history.time_s.push_back(600.0 * static_cast<double>(i));
    history.resistance_work_psi.push_back(psi);
    history.resistance_middle_psi.push_back(psi);
    history.bleed_water_kg_m2.push_back(film[i]);
    history.bleed_kg_m2_h.push_back(bleed[i]);
    history.evaporation_kg_m2_h.push_back(0.1);
    psi *= 2.0;
  }
  return history;
}

}  // namespace

TEST_CASE("a level is met where the logarithm says") {
  const std::vector<double> time_s{0.0, 100.0, 200.0};
  const std::vector<double> psi{10.0, 40.0, 160.0};
  CHECK(*first_reaches(time_s, psi, 20.0) == doctest::Approx(50.0));
  CHECK(*first_reaches(time_s, psi, 80.0) == doctest::Approx(150.0));
  CHECK(*first_reaches(time_s, psi, 10.0) == 0.0);
  CHECK(!first_reaches(time_s, psi, 161.0));
  const std::vector<double> from_nothing{0.0, 0.0, 10.0};
  CHECK(*first_reaches(time_s, from_nothing, 5.0) == doctest::Approx(150.0));
}

TEST_CASE("a value between entries lies on the straight line") {
  const std::vector<double> time_s{0.0, 100.0, 200.0};
  const std::vector<double> c{10.0, 20.0, 0.0};
  CHECK(value_at(time_s, c, 150.0) == doctest::Approx(10.0));
  CHECK(value_at(time_s, c, -5.0) == 10.0);
  CHECK(value_at(time_s, c, 500.0) == 0.0);
}

TEST_CASE("the sheen goes when a film that stood thins out") {
  const auto practice = practice_with_sheen(0.05, 30.0);
  const auto gone = sheen_gone(
      doubling_history({0.0, 0.06, 0.08, 0.06, 0.04, 0.0}, {0.4, 0.3, 0.2, 0.05, 0.02, 0.0}),
      practice);
  REQUIRE(gone);
  CHECK(gone->at_s == 2400.0);
  CHECK(gone->bleed_left == doctest::Approx(0.01 / (0.35 + 0.25 + 0.125 + 0.035 + 0.01)));
}

TEST_CASE("a film that never stands is gone after the grace time, unless it grows") {
  const auto practice = practice_with_sheen(0.05, 15.0);
  const auto dry = doubling_history({0.0, 0.0, 0.0, 0.0}, {0.05, 0.05, 0.05, 0.05});
  CHECK(sheen_gone(dry, practice)->at_s == 1200.0);
  const auto growing = doubling_history({0.0, 0.01, 0.02, 0.03}, {0.3, 0.3, 0.3, 0.05});
  CHECK(sheen_gone(growing, practice)->at_s == 1800.0);
}

TEST_CASE("initial set ends the wait for a film that stays") {
  const auto practice = practice_with_sheen(0.05, 30.0);
  const std::vector<double> standing(9, 1.0);
  // 5 psi doubled seven times is 640, the first over 500.
  CHECK(sheen_gone(doubling_history(standing, standing), practice)->at_s == 4200.0);
  const std::vector<double> short_of_it(5, 1.0);
  CHECK(!sheen_gone(doubling_history(short_of_it, short_of_it), practice));
}

TEST_CASE("a cell's window waits for the sheen") {
  const auto practice = practice_with_sheen(0.05, 30.0);
  const auto history =
      doubling_history({0.1, 0.1, 0.1, 0.1, 0.1, 0.04, 0.0}, {0.3, 0.3, 0.3, 0.2, 0.2, 0.05, 0.02});
  const CellWindow waits = cell_window(history, {10.0, 320.0, true}, practice);
  CHECK(*waits.opens_s == 3000.0);
  CHECK(*waits.closes_s == doctest::Approx(3600.0));
  CHECK(!waits.water_stands);
  CHECK(!waits.stiff_before_dry);
  CHECK(*cell_window(history, {10.0, 320.0, false}, practice).opens_s == doctest::Approx(600.0));
  CHECK(cell_window(history, {10.0, 100.0, true}, practice).stiff_before_dry);
}

TEST_CASE("water that stands when no more rises can be dragged off") {
  const auto practice = practice_with_sheen(0.05, 30.0);
  const auto history =
      doubling_history({0.1, 0.4, 0.6, 0.6, 0.5, 0.4, 0.3}, {0.3, 0.3, 0.3, 0.2, 0.0, 0.0, 0.0});
  CHECK(*bleeding_ends(history) == 2400.0);
  const CellWindow dragged = cell_window(history, {10.0, 320.0, true}, practice);
  CHECK(*dragged.opens_s == 2400.0);
  CHECK(dragged.water_stands);
  CHECK(!dragged.stiff_before_dry);
}

TEST_CASE("what leaves the top open is done over the last of the bleeding, rather than never") {
  // Common practice, no source: a thick slab is broomed though a little water still rises.
  auto practice = practice_with_sheen(0.05, 30.0);
  practice.sheen.early_bleed_fraction = 0.25;
  // 5 psi doubled every 600 s; of the bleed water under a quarter is left from 1800 s on.
  const auto history =
      doubling_history({0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3}, {0.4, 0.4, 0.4, 0.1, 0.1, 0.1, 0.0});
  ResistanceWindow broom{10.0, 80.0, true};
  CHECK(cell_window(history, broom, practice).stiff_before_dry);
  broom.leaves_top_open = true;
  const CellWindow open = cell_window(history, broom, practice);
  CHECK_FALSE(open.stiff_before_dry);
  CHECK(*open.opens_s == 1800.0);
  CHECK(open.water_stands);
  CHECK(open.still_bleeds);
  broom.closes_psi = 30.0;  // too stiff before so little is left
  CHECK(cell_window(history, broom, practice).stiff_before_dry);
}

TEST_CASE("a share of the area comes when enough of it has") {
  const std::vector<TimedArea> areas{{300.0, 1.0}, {100.0, 1.0}, {std::nullopt, 1.0}, {200.0, 7.0}};
  CHECK(*time_of_fraction(areas, 0.10) == 100.0);
  CHECK(*time_of_fraction(areas, 0.11) == 200.0);
  CHECK(*time_of_fraction(areas, 0.90) == 300.0);
  CHECK(!time_of_fraction(areas, 0.95));
}

}  // namespace slabtide
