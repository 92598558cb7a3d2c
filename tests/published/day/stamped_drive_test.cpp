#include <doctest/doctest.h>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

// 640 ft2 (8 yd3, 4 in) of stamping in one go is fairly easy at 70 F concrete and nearly
// impossible at 80 F or more; from 75 F retard the last third or half of the load. Stamping a
// Long Driveway, Concrete Construction (published); the source gives no minutes, and no size of
// the crew: four finishers, three to stamp and one to edge, is common practice.

namespace slabtide {

namespace {

using test::PlannedDay;

/// 16 x 40 ft in the open, four finishers, a clear day of this high, placed from eight.
Job drive(double high_f, double low_f, double concrete_f) {
  Job job = test::sample_job({test::zone_named(
      "drive", test::rectangle(0, 0, m_from_ft(16.0), m_from_ft(40.0)), Finish::stamp)});
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.high_c = celsius_from_fahrenheit(high_f);
  weather.low_c = celsius_from_fahrenheit(low_f);
  job.mix.temperature = celsius_from_fahrenheit(concrete_f);
  job.crew.finishers = 4;
  return job;
}

const ComparedChoice& best_in_last_loads(const Comparison& comparison) {
  const ComparedChoice* best = nullptr;
  for (const ComparedChoice& compared : comparison.choices) {
    if (compared.choice.label.find(", last ") == std::string::npos) continue;
    if (best == nullptr || compared.figures.minutes_late < best->figures.minutes_late) {
      best = &compared;
    }
  }
  REQUIRE(best != nullptr);
  return *best;
}

void tell(const char* day, const ComparedChoice& compared) {
  MESSAGE(fmt::format("{}: {}: {:.0f} min late, smallest crew {}, {} stops", day,
                      compared.choice.label, compared.figures.minutes_late,
                      compared.figures.smallest_crew.value_or(0), compared.figures.stops));
}

}  // namespace

TEST_CASE("a drive of 640 ft2 on a hot clear day misses windows, and late loads are retarded") {
  const PlannedDay day(drive(92, 70, 84));
  const Comparison comparison = compare_choices(day.compared(), {});
  const ComparedChoice& retarded = best_in_last_loads(comparison);
  for (const ComparedChoice& compared : comparison.choices) tell("92 F, concrete 84 F", compared);
  CHECK(comparison.choices.front().figures.minutes_late > 15.0);
  CHECK(retarded.figures.minutes_late < 0.5 * comparison.choices.front().figures.minutes_late);
  CHECK(comparison.best != 0);
}

TEST_CASE("the cooler the day, the less of the drive is late, and the fewer hands do") {
  const ChoiceFigures hot = PlannedDay(drive(92, 70, 84)).figures();
  const ChoiceFigures cool = PlannedDay(drive(68, 50, 65)).figures();
  CHECK(cool.minutes_late < hot.minutes_late);
  CHECK(cool.smallest_crew.value() < hot.smallest_crew.value());
}

// Known disagreement, kept here so that it is seen when it goes. At 65 F the practice says fairly
// easy; here four finishers are 42 min late and seven would be wanted (92 F: 56 min and ten).
// The window itself is 46 min at 65 F and 33 at 84, and a single load has one set age from
// batching on: the 55 min it takes to place give the last concrete no later window than the first.
TEST_CASE("the same drive at 65 F is left as it is" * doctest::should_fail()) {
  const PlannedDay day(drive(68, 50, 65));
  const Comparison comparison = compare_choices(day.compared(), {});
  for (const ComparedChoice& compared : comparison.choices) tell("68 F, concrete 65 F", compared);
  CHECK(comparison.choices.front().figures.minutes_late == 0.0);
  CHECK(comparison.best == 0);
}

// The same in small loads, each batched as it is wanted: as if set age ran from placing.
TEST_CASE("were set age to run from placing, the drive would go as practice says") {
  Job cool = drive(68, 50, 65);
  Job hot = drive(92, 70, 84);
  for (Job* job : {&cool, &hot}) job->order.load_size_m3 = 0.5;
  const ChoiceFigures cool_figures = PlannedDay(cool).figures();
  const ChoiceFigures hot_figures = PlannedDay(hot).figures();
  MESSAGE(
      fmt::format("in loads of 0.5 m3: 68 F {:.0f} min late, smallest crew {}; 92 F {:.0f} min, {}",
                  cool_figures.minutes_late, cool_figures.smallest_crew.value_or(0),
                  hot_figures.minutes_late, hot_figures.smallest_crew.value_or(0)));
  CHECK(cool_figures.minutes_late <= default_practice().compare.worth_min);
  CHECK(hot_figures.minutes_late > default_practice().compare.worth_min);
}

}  // namespace slabtide
