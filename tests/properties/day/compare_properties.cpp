#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <utility>

#include <doctest/doctest.h>

#include "slabtide/day/compare/advice.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/job/reading/read_job.h"
#include "support/planned_day.h"
#include "support/random_job.h"

// What must hold for plan and comparison on any job: ours, from the meaning of the terms. More
// jobs: SLABTIDE_JOBS=200 build/test/tests/properties/day/properties_compare

namespace slabtide {

namespace {

using test::PlannedDay;

constexpr std::size_t days_drawn = 20;

/// The planned day of a random job that can be read and planned; empty for another.
std::optional<PlannedDay> random_day(std::uint64_t seed) {
  const Parsed<Job> job = read_job(test::random_job_toml(seed));
  if (!job.ok() || !std::holds_alternative<TypedWeather>(job.value->weather)) return std::nullopt;
  const Forecast forecast = PlannedDay::forecast_of(*job.value);
  const Parsed<WeatherSeries> series = WeatherSeries::from_forecast(forecast);
  if (!series.ok()) return std::nullopt;
  const Practice practice = with_labels(default_practice(), job.value->finish_work);
  if (!run_pour(*job.value, *series.value, practice, SolverSettings{}).ok()) return std::nullopt;
  return PlannedDay(*job.value, forecast);
}

/// With `days` drawn, or, where it is null, on the likely day.
void check_agreement(const PlannedDay& day, const Ensemble* days) {
  const CompareRules& rules = day.practice().compare;
  PlannedPour pour = day.pour();
  if (days != nullptr) pour.plan = with_bands(std::move(pour.plan), day.job(), *days);
  CompareSettings settings;
  settings.ensemble = days;
  const Comparison comparison = compare_choices(pour, settings);
  const ComparedChoice& ordered = comparison.choices.front();
  const ComparedChoice& best = comparison.choices[comparison.best];
  const Advice advice = advise(day.job(), comparison, {}, rules);
  // The job as ordered is judged as its plan judges it.
  const Judgement planned = judge(pour.plan.cautions);
  CHECK(ordered.figures.judgement.verdict == planned.verdict);
  CHECK(ordered.figures.judgement.reasons == planned.reasons);
  // Never "leave it" where the plan says stop.
  const bool leave = advice.order.starts_with("Leave it");
  if (planned.verdict == Verdict::think_again) CHECK(!leave);
  // What removes every stop is found, where anything that was tried does.
  const bool removable = std::any_of(comparison.choices.begin(), comparison.choices.end(),
                                     [](const ComparedChoice& one) {
                                       return one.figures.judgement.verdict != Verdict::think_again;
                                     });
  CHECK(comparison.not_that_day() == !removable);
  CHECK((advice.order == "Not that day.") == !removable);
  CHECK((best.figures.judgement.verdict == Verdict::think_again) == !removable);
  for (const ComparedChoice& one : comparison.choices) {
    CHECK(one.money.has_value() == day.job().prices.has_value());
    if (!one.money) continue;
    CHECK(std::isfinite(one.money->likely()));
    CHECK(one.money->likely() >= 0.0);
  }
  // No other choice is better.
  for (const ComparedChoice& other : comparison.choices) CHECK(!better(other, best, rules));
}

/// False for a job that cannot be planned.
bool agree_on(std::uint64_t seed) {
  INFO("seed " << seed);
  const auto day = random_day(seed);
  if (!day) return false;
  // Every other job over days drawn, as the program compares unless it is told not to.
  if (seed % 2 == 0) {
    check_agreement(*day, nullptr);
  } else {
    const Ensemble days = sampled_days(day->pour(), {days_drawn, 0, {}});
    check_agreement(*day, &days);
  }
  return true;
}

}  // namespace

TEST_CASE("plan and comparison never disagree") {
  const std::uint64_t first = test::first_job(10);
  const std::uint64_t jobs = test::job_count(16);
  int compared = 0;
  for (std::uint64_t seed = first; seed < first + jobs; ++seed) compared += agree_on(seed) ? 1 : 0;
  CHECK(compared > 0);
}

TEST_CASE("jobs that a comparison once threw at are compared") {
  CHECK(agree_on(67));   // a part of which not a tenth opens before the forecast ends
  CHECK(agree_on(253));  // just after midnight of the first day that can be planned
}

}  // namespace slabtide
