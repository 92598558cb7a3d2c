#include <cmath>
#include <fstream>
#include <iterator>

#include <doctest/doctest.h>

#include "core/text.h"
#include "report/files/json_compare.h"
#include "slab/mix/mix_temperature.h"
#include "slabtide/core/units.h"
#include "slabtide/day/compare/advice.h"
#include "slabtide/day/compare/turning_point.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/report/text/text_compare.h"
#include "slabtide/report/words/compare_facts.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

using test::PlannedDay;
using test::rectangle;
using test::sample_job;
using test::zone_named;

/// A court on a hot day: too much for two finishers.
Job hot_court(int finishers, double length_m = 8.0) {
  Job job = sample_job({zone_named("court", rectangle(0, 0, length_m, 5), Finish::stamp)});
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.high_c = 35.0;
  weather.low_c = 20.0;
  job.mix.temperature = 29.0;
  job.crew.finishers = finishers;
  return job;
}

Job mild_pads() {
  return sample_job({zone_named("court", rectangle(0, 0, 3, 3), Finish::stamp),
                     zone_named("path", rectangle(10, 0, 4, 1.2))});
}

std::string json_of(const PlannedDay& day, const CompareSettings& settings) {
  const Comparison comparison = compare_choices(day.pour(), settings);
  const TurningPoint turning = find_turning_point(day.pour(), comparison, settings);
  const Advice advice = advise(day.job(), comparison, turning, day.practice().compare);
  return json_compare({day.pour(), comparison, turning, advice});
}

/// Whether a choice beats the job as ordered on a day warmer by `shift_k`.
bool helps(const PlannedDay& day, const ComparedChoice& choice, const ComparedChoice& ordered,
           double shift_k) {
  const auto on_that_day = [&](const ComparedChoice& compared) {
    const ShiftedDay shifted = shift_day(compared.choice.job, day.forecast(), shift_k);
    const WeatherSeries series = *WeatherSeries::from_forecast(shifted.forecast).value;
    const PourRun run = *run_pour(shifted.job, series, day.practice(), {}).value;
    ComparedChoice there;
    there.figures = figures_of(shifted.job, plan_day(shifted.job, run, day.practice()));
    there.cost = compared.cost;
    return there;
  };
  return better(on_that_day(choice), on_that_day(ordered), day.practice().compare);
}

ComparedChoice made_of(int stops, double late_min, double disturbance) {
  ComparedChoice compared;
  compared.figures.stops = stops;
  compared.figures.stakes.stops[1] = stops;
  compared.figures.minutes_late = late_min;
  compared.figures.expected_late_min = late_min;
  compared.figures.bad_day_late_min = late_min;
  compared.cost.disturbance = disturbance;
  return compared;
}

}  // namespace

TEST_CASE("where even the best choice runs into a stop no weather is looked for that turns it") {
  const PlannedDay day(hot_court(1));
  Comparison comparison;
  comparison.choices.resize(1);
  comparison.choices[0].choice.job = day.job();
  comparison.choices[0].figures.stops = 1;
  std::size_t computed = 0;
  const CompareSettings settings{1, [&computed](std::size_t) { ++computed; }, nullptr};
  CHECK(find_turning_point(day.pour(), comparison, settings).by_shift_k.turns.empty());
  CHECK(computed == 0);
  comparison.choices[0].figures.stops = 0;
  find_turning_point(day.pour(), comparison, settings);
  CHECK(computed > 0);
}

TEST_CASE("stops weigh before lateness, much lateness more than trouble") {
  const CompareRules rules = default_practice().compare;
  CHECK(better(made_of(0, 90, 9), made_of(1, 0, 0), rules));
  CHECK(better(made_of(1, 10, 9), made_of(1, 90, 0), rules));
  CHECK(better(made_of(1, 10, 1), made_of(1, 10, 2), rules));
  // Two minutes do not count as a gain.
  CHECK(better(made_of(0, 9, 0), made_of(0, 7, 1), rules));
  CHECK(!better(made_of(0, 9, 1), made_of(0, 9, 1), rules));
}

TEST_CASE("no three hands come for a few minutes of a bad day, one does for a finish at risk") {
  // What a foreman pays for: common practice, no source.
  const CompareRules rules = default_practice().compare;
  ComparedChoice ordered = made_of(0, 4, 0);
  ordered.figures.bad_day_late_min = 17.0;
  constexpr double hand = 3.0;
  CHECK(better(ordered, made_of(0, 0, 3 * hand), rules));
  ordered.figures.expected_late_min = 10.0;
  CHECK(better(made_of(0, 0, hand), ordered, rules));
}

TEST_CASE("a lost slab weighs before a lost finish, and what cautions warn of before trouble") {
  const CompareRules rules = default_practice().compare;
  ComparedChoice slab = made_of(1, 0, 0);
  ComparedChoice finish = made_of(0, 0, 0);
  finish.figures.stakes.stops = {0, 0, 3, 0, 0, 0};
  CHECK(better(finish, slab, rules));
  ComparedChoice wary = made_of(0, 0, 0);
  wary.figures.stakes.caution_cost = caution_cost(Loss::crack);
  CHECK(better(made_of(0, 0, 1), wary, rules));
  CHECK(better(wary, made_of(0, 0, 3), rules));
  // A finish that is late in earnest is lost, whatever a caution may warn of.
  CHECK(better(wary, made_of(0, 60, 0), rules));
}

TEST_CASE("what may come weighs before the day as forecast, and the bad day settles a tie") {
  const CompareRules rules = default_practice().compare;
  ComparedChoice sure = made_of(0, 12, 4);
  ComparedChoice risky = made_of(0, 12, 0);
  risky.figures.minutes_late = 0.0;
  risky.figures.expected_late_min = 30.0;
  CHECK(better(sure, risky, rules));
  risky.figures.expected_late_min = 12.0;
  CHECK(better(risky, sure, rules));
  risky.figures.bad_day_late_min = 45.0;
  CHECK(better(sure, risky, rules));
}

TEST_CASE("comparing twice, on one thread and on several, gives the same") {
  const PlannedDay day(hot_court(2, 5.0));
  const std::string once = json_of(day, {1, {}});
  CHECK(json_of(day, {1, {}}) == once);
  CHECK(json_of(day, {3, {}}) == once);
}

TEST_CASE("progress is told for every day computed") {
  const PlannedDay day(mild_pads());
  std::vector<std::size_t> told;
  const CompareSettings settings{2, [&told](std::size_t done) { told.push_back(done); }};
  compare_choices(day.pour(), settings);
  REQUIRE(!told.empty());
  for (std::size_t i = 0; i < told.size(); ++i) CHECK(told[i] == i + 1);
}

TEST_CASE("the best is no worse than any, and a needless change never wins") {
  for (const Job& job : {hot_court(2), hot_court(6), mild_pads()}) {
    const PlannedDay day(job);
    const Comparison comparison = compare_choices(day.pour(), {});
    const ComparedChoice& best = comparison.choices[comparison.best];
    for (const ComparedChoice& other : comparison.choices) {
      CHECK(!better(other, best, day.practice().compare));
    }
    const ChoiceFigures& ordered = comparison.choices.front().figures;
    if (comparison.best != 0) {
      CHECK(
          (best.figures.stops < ordered.stops || best.figures.minutes_late < ordered.minutes_late ||
           best.figures.stakes.caution_cost + best.cost.disturbance < ordered.stakes.caution_cost));
    }
  }
  const PlannedDay mild(mild_pads());
  CHECK(mild.figures().minutes_late == 0.0);
}

TEST_CASE("a slab that nothing threatens is left as it is ordered") {
  Job job = mild_pads();
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.high_c = 18.0;
  weather.low_c = 11.0;
  weather.dew_point_c = 9.0;
  weather.wind_10m_m_s = 1.0;
  weather.cloud = {0.5, 0.5, 0.5, 0.5};
  job.pour.saws = {SawKind::early_entry};
  for (Zone& zone : job.zones) zone.finish = Finish::broom;
  const PlannedDay day(job);
  const Comparison comparison = compare_choices(day.pour(), {});
  REQUIRE(comparison.choices.front().figures.stops == 0);
  CHECK(comparison.best == 0);
  CHECK(advise(job, comparison, {}, day.practice().compare).order == "Leave it as it is ordered.");
}

TEST_CASE("where every choice runs into a stop the answer is another day") {
  Job job = mild_pads();
  Forecast forecast = PlannedDay::forecast_of(job);
  for (ForecastHour& hour : forecast.hours) hour.rain_chance = 0.9;
  const PlannedDay day(job, forecast);
  const Comparison comparison = compare_choices(day.pour(), {});
  CHECK(comparison.not_that_day());
  const Advice advice = advise(job, comparison, {}, day.practice().compare);
  CHECK(advice.order == "Not that day.");
  CHECK(advice.why.starts_with(
      "Nothing that was tried takes away the stop: rain on the fresh slab."));
}

TEST_CASE("one more finisher never adds minutes late") {
  for (const Job& job : {hot_court(1), mild_pads()}) {
    double before = 1e9;
    for (int finishers = 1; finishers <= 8; ++finishers) {
      Job changed = job;
      changed.crew.finishers = finishers;
      const ChoiceFigures figures = PlannedDay(changed).figures();
      CHECK(figures.minutes_late <= before);
      before = figures.minutes_late;
      if (figures.smallest_crew) {
        CHECK((finishers >= *figures.smallest_crew) == (figures.minutes_late <= 0.0));
      }
    }
  }
}

TEST_CASE("a warmer day shifts air, dew point, ground and concrete alike") {
  Job job = hot_court(2);
  job.site.ground_c = 15.0;
  IngredientTemperatures ingredients;
  ingredients.cement_c = 40.0;
  ingredients.aggregate_c = 25.0;
  ingredients.water_c = 15.0;
  ingredients.aggregate_kg_m3 = 1800.0;
  ingredients.ice_kg_m3 = 20.0;
  job.mix.temperature = ingredients;
  const PlannedDay day(job);
  const ShiftedDay warm = shift_day(job, day.forecast(), 4.0);
  for (std::size_t i = 0; i < warm.forecast.hours.size(); ++i) {
    CHECK(*warm.forecast.hours[i].air_c == doctest::Approx(*day.forecast().hours[i].air_c + 4.0));
    CHECK(*warm.forecast.hours[i].dew_point_c ==
          doctest::Approx(*day.forecast().hours[i].dew_point_c + 4.0));
  }
  CHECK(*warm.job.site.ground_c == 19.0);
  CHECK(std::get<double>(warm.job.mix.temperature) ==
        doctest::Approx(mix_temperature_c(ingredients, job.mix.cementitious_kg_m3, job.mix.w_cm) +
                        4.0));
}

TEST_CASE("the answer is another on the two sides of the turning point") {
  std::ifstream file(SLABTIDE_SOURCE_DIR "/data/demo/hot.toml");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  Job demo = read_job(text).value.value();
  demo.crew.finishers = 3;  // of whom the hot demo asks a little too much
  int turned = 0;
  for (const Job& job : {demo, hot_court(2), hot_court(4), hot_court(3, 5.0)}) {
    const PlannedDay day(job);
    const Comparison comparison = compare_choices(day.pour(), {});
    if (comparison.best == 0) continue;
    const TurningPoint turning = find_turning_point(day.pour(), comparison, {});
    const ComparedChoice& best = comparison.choices[comparison.best];
    // The turning point is given to a degree F, 0.56 K. Observed: with the full solver it is 0.1 to
    // 0.2 K higher. One at the edge of the search has no other side.
    constexpr double near_k = 0.4;
    const double edge_k = day.practice().compare.search_k - 1.0;
    for (const double turn : turning.by_shift_k.turns) {
      if (std::abs(turn) > edge_k) continue;
      ++turned;
      INFO(best.choice.label << " at " << turn << " K");
      CHECK(helps(day, best, comparison.choices.front(), turn - near_k) !=
            helps(day, best, comparison.choices.front(), turn + near_k));
    }
  }
  CHECK(turned > 0);
}

TEST_CASE("the advice says why another that is less late on the day is not taken") {
  Job job = hot_court(2);
  const auto choice = [&job](const char* label, double late_min, double expected_min) {
    ComparedChoice compared;
    compared.choice = {ChoiceKind::start, label, label, job};
    compared.figures.minutes_late = late_min;
    compared.figures.expected_late_min = expected_min;
    compared.figures.bad_day_late_min = expected_min;
    return compared;
  };
  Comparison comparison;
  comparison.choices = {choice("as ordered", 20.0, 30.0), choice("start 1 h earlier", 5.0, 5.0),
                        choice("windbreak", 0.0, 25.0)};
  comparison.best = 1;
  const CompareRules& rules = default_practice().compare;
  CHECK(advise(job, comparison, {}, rules)
            .why.ends_with(" Windbreak is less late on the day as forecast (0 min), but is 25 min "
                           "late on average."));
  comparison.choices[2].figures.stops = 1;
  CHECK(advise(job, comparison, {}, rules).why.ends_with("but runs into 1 stop."));
  comparison.choices[2] = choice("windbreak", 6.0, 25.0);
  CHECK(advise(job, comparison, {}, rules).why.find("Windbreak") == std::string::npos);
  // What is as late as before is no gain.
  CHECK(advise(job, comparison, {}, rules).why.find("As ordered") != std::string::npos);
  comparison.choices[1] = choice("start 1 h earlier", 20.0, 30.0);
  CHECK(advise(job, comparison, {}, rules).why.find("As ordered") == std::string::npos);
  // A start in the dark needs lights.
  CHECK(advise(job, comparison, {}, rules).cost.find("ights") == std::string::npos);
  const SunTimes sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  comparison.choices[1].choice.job.pour.start = after_seconds(sun.rise, -2400.0);
  CHECK(advise(job, comparison, {}, rules).cost.find("ights until the sun is up at ") !=
        std::string::npos);
}

TEST_CASE("finishing by lamps counts as late by a tenth of its time") {
  // Common practice, no source: it takes longer than by day, and shows less.
  const CompareRules& rules = default_practice().compare;
  ComparedChoice by_day;
  by_day.figures.expected_late_min = by_day.figures.bad_day_late_min = 30.0;
  ComparedChoice at_night;
  at_night.figures.dark_min = 400.0;
  CHECK(better(by_day, at_night, rules));
  at_night.figures.dark_min = 60.0;
  CHECK(better(at_night, by_day, rules));
}

TEST_CASE("what is finished after dusk is counted in the dark, by day nothing is") {
  Job job = hot_court(4);
  CHECK(PlannedDay(job).figures().dark_min == 0.0);
  job.pour.start = after_seconds(job.pour.start, 10.0 * 3600.0);
  const PlannedDay evening(job);
  const ChoiceFigures figures = evening.figures();
  const double after_sunset_min =
      seconds_between(evening.plan().sun.set, *figures.last_finish) / 60.0;
  REQUIRE(after_sunset_min > 30.0);
  CHECK(figures.dark_min == doctest::Approx(after_sunset_min - 30.0));
}

TEST_CASE("the table keeps to 80 columns and marks one row") {
  const PlannedDay day(hot_court(2, 5.0));
  const Comparison comparison = compare_choices(day.pour(), {});
  const TurningPoint turning = find_turning_point(day.pour(), comparison, {});
  const Advice advice = advise(day.job(), comparison, turning, day.practice().compare);
  const std::string text = text_compare({day.pour(), comparison, turning, advice}, TextStyle{});
  std::size_t from = 0;
  int marked = 0;
  while (from < text.size()) {
    const std::size_t to = text.find('\n', from);
    const std::string line = text.substr(from, to - from);
    INFO(line);
    CHECK(display_width(line) <= 80);
    if (line.starts_with("  * ")) ++marked;
    from = to + 1;
  }
  CHECK(marked == 1);
}

}  // namespace slabtide
