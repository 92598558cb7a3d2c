#include "slab/mix/admixture_shift.h"

#include <algorithm>
#include <limits>
#include <stdexcept>
#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"

using namespace slabtide;

namespace {

constexpr double initial_h = 4.25;

Admixture floz(AdmixtureKind kind, double floz_cwt) {
  Admixture admixture;
  admixture.kind = kind;
  admixture.dose_ml_100kg = ml_100kg_from_floz_cwt(floz_cwt);
  return admixture;
}

Admixture chloride(double percent) {
  Admixture admixture;
  admixture.kind = AdmixtureKind::accelerator_chloride;
  admixture.dose_percent = percent;
  return admixture;
}

Admixture supplied(AdmixtureKind kind, double hours) {
  Admixture admixture;
  admixture.kind = kind;
  admixture.shift_h = hours;
  return admixture;
}

double hours(const std::vector<Admixture>& admixtures) {
  return admixture_shift(admixtures, initial_h).hours;
}

bool noted(const AdmixtureShift& shift, std::string_view words) {
  return std::any_of(shift.notes.begin(), shift.notes.end(), [&](const std::string& note) {
    return note.find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("no admixture, no shift, no words") {
  const AdmixtureShift shift = admixture_shift({}, initial_h);
  CHECK(shift.hours == 0.0);
  CHECK(shift.notes.empty());
}

TEST_CASE("hours by dose, from memory") {
  CHECK(hours({floz(AdmixtureKind::retarder, 2.0)}) == doctest::Approx(1.2));
  CHECK(hours({floz(AdmixtureKind::stabiliser, 4.0)}) == doctest::Approx(2.0));
  CHECK(hours({chloride(0.5)}) == doctest::Approx(-0.6));
  CHECK(hours({chloride(1.0)}) == doctest::Approx(-1.2));
  CHECK(hours({chloride(2.0)}) == doctest::Approx(-2.0));
  CHECK(hours({floz(AdmixtureKind::accelerator_non_chloride, 20.0)}) == doctest::Approx(-1.2));
  CHECK(hours({floz(AdmixtureKind::accelerator_non_chloride, 40.0)}) == doctest::Approx(-2.0));
}

TEST_CASE("shifts of several admixtures add") {
  CHECK(hours({floz(AdmixtureKind::retarder, 2.0), chloride(1.0)}) == doctest::Approx(0.0));
}

TEST_CASE("the supplier's hours are taken as they are and said so") {
  const AdmixtureShift shift = admixture_shift({supplied(AdmixtureKind::retarder, 1.7)}, initial_h);
  CHECK(shift.hours == doctest::Approx(1.7));
  CHECK(noted(shift, "set retarder: +1.7 h on setting at 73 °F (23 °C), the supplier's hours"));
}

TEST_CASE("a shift from a dose is marked as from memory") {
  const AdmixtureShift shift = admixture_shift({floz(AdmixtureKind::retarder, 2.0)}, initial_h);
  CHECK(noted(
      shift,
      "set retarder: +1.2 h on setting at 73 °F (23 °C), estimated from its dose, from memory"));
  CHECK(shift.notes.size() == 1);
}

TEST_CASE("a dose that shifts next to nothing is not told below zero") {
  const AdmixtureShift shift = admixture_shift({chloride(0.01)}, initial_h);
  CHECK(shift.hours < 0.0);
  CHECK(noted(shift, ": +0.0 h on setting"));
  CHECK(noted(shift, ": +0.0 h is outside"));
  CHECK_FALSE(noted(shift, "-0"));
}

TEST_CASE("calcium chloride over 2 percent is not counted and said so") {
  const AdmixtureShift shift = admixture_shift({chloride(3.0)}, initial_h);
  CHECK(shift.hours == doctest::Approx(-2.0));
  CHECK(noted(shift, "over 2% of calcium chloride"));
  CHECK(noted(shift, "aluminum or prestress"));
}

TEST_CASE("doses outside the useful range and shifts outside ASTM C494 are named") {
  CHECK(noted(admixture_shift({floz(AdmixtureKind::retarder, 7.0)}, initial_h),
              "outside the useful 1 to 4"));
  CHECK(noted(admixture_shift({floz(AdmixtureKind::retarder, 7.0)}, initial_h), "ASTM C494"));
  CHECK(noted(admixture_shift({floz(AdmixtureKind::stabiliser, 1.0)}, initial_h),
              "outside the useful 2 to 8"));
  CHECK_FALSE(noted(admixture_shift({floz(AdmixtureKind::stabiliser, 8.0)}, initial_h), "C494"));
  CHECK_FALSE(noted(admixture_shift({floz(AdmixtureKind::retarder, 2.0)}, initial_h), "C494"));
}

TEST_CASE("a shift never takes more than 0.6 of initial set away") {
  const AdmixtureShift shift =
      admixture_shift({supplied(AdmixtureKind::accelerator_non_chloride, -3.0)}, initial_h);
  CHECK(shift.hours == doctest::Approx(-0.6 * initial_h));
  CHECK(noted(shift, "counted as no more than -2.5 h"));
}

TEST_CASE("an admixture without dose or hours is a programmer's error") {
  CHECK_THROWS_AS(hours({Admixture{}}), std::invalid_argument);
  CHECK_THROWS_AS(hours({floz(AdmixtureKind::accelerator_chloride, 2.0)}), std::invalid_argument);
  CHECK_THROWS_AS(hours({floz(AdmixtureKind::retarder, -1.0)}), std::invalid_argument);
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(hours({supplied(AdmixtureKind::retarder, nan)}), std::invalid_argument);
  CHECK_THROWS_AS(hours({chloride(nan)}), std::invalid_argument);
}
