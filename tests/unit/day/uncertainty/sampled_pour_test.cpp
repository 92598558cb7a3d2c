#include "slabtide/day/uncertainty/sampled_pour.h"

#include <cmath>

#include <doctest/doctest.h>

#include "slabtide/day/pour/cell_times.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

using test::plan_of;
using test::rectangle;
using test::sample_job;
using test::zone_named;

Job small_job() { return sample_job({zone_named("pad", rectangle(0, 0, 1.2, 1.2))}); }

SampleScale day_ahead() { return {.set_times_estimated = true, .lead_at_start_h = 0.0}; }

UncertainInputs only(UncertainInput unknown, double z) {
  UncertainInputs uncertain_inputs;
  uncertain_inputs.of(unknown) = z;
  return uncertain_inputs;
}

TEST_CASE("even unknowns are standard normal, cut at 2.5, in mirrored pairs") {
  const std::vector<UncertainInputs> samples = even_uncertain_inputs(1000);
  // Variance of a normal truncated at c: 1 - 2 c phi(c)/(2 Phi(c) - 1), by hand 0.91126. Observed:
  // means under 1e-12, variances 0.904 to 0.915, correlations up to 0.03.
  for (std::size_t k = 0; k < uncertain_input_count; ++k) {
    double sum = 0.0;
    double square = 0.0;
    for (const UncertainInputs& sample : samples) {
      sum += sample.z[k];
      square += sample.z[k] * sample.z[k];
      CHECK(std::abs(sample.z[k]) <= 2.5);
    }
    CAPTURE(k);
    CHECK(std::abs(sum) < 1e-9);
    CHECK(square / 1000.0 == doctest::Approx(0.91126).epsilon(0.02));
  }
}

TEST_CASE("even unknowns do not go together") {
  const std::vector<UncertainInputs> samples = even_uncertain_inputs(200);
  double max = 0.0;
  for (std::size_t a = 0; a < uncertain_input_count; ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      double product = 0.0;
      for (const UncertainInputs& sample : samples) product += sample.z[a] * sample.z[b];
      max = std::fmax(max, std::abs(product / 200.0));
    }
  }
  MESSAGE("largest correlation of two unknowns over 200 draws: ", max);
  CHECK(max < 0.25);
}

TEST_CASE("the same unknowns come every time, and fewer are the first of more") {
  const auto few = even_uncertain_inputs(10);
  const auto many = even_uncertain_inputs(50);
  for (std::size_t i = 0; i < few.size(); ++i) CHECK(few[i].z == many[i].z);
  CHECK(even_uncertain_inputs(7).size() == 7);
  CHECK(even_uncertain_inputs(0).empty());
}

TEST_CASE("one day in ten is off by more than the practice says") {
  const SpreadRules spread = default_practice().spread;
  const double z = 1.2815515655446004;  // one in ten of a normal distribution is above it
  CHECK(sample_of(only(UncertainInput::air, z), spread, day_ahead()).weather.air_k ==
        doctest::Approx(spread.air_k));
  CHECK(sample_of(only(UncertainInput::convection, z), spread, day_ahead()).convection_factor ==
        doctest::Approx(1.0 + spread.convection_fraction));
  CHECK(sample_of(only(UncertainInput::convection, -z), spread, day_ahead()).convection_factor ==
        doctest::Approx(1.0 / (1.0 + spread.convection_fraction)));
  CHECK(sample_of(only(UncertainInput::delay, z), spread, day_ahead()).delay_s ==
        doctest::Approx(60.0 * spread.late_min));
  CHECK(sample_of(only(UncertainInput::delay, -z), spread, day_ahead()).delay_s ==
        doctest::Approx(-60.0 * spread.early_min));
}

TEST_CASE("what the job tells is not drawn: shelter, ground, margin, aggregate") {
  Job job = small_job();
  const test::Planned planned = plan_of(job);
  const SpreadRules spread = default_practice().spread;
  const double z = 1.2815515655446004;
  const auto scale_of = [&] { return sample_scale(job, planned.run, Forecast{}, spread); };
  const SampleScale untold = scale_of();
  // 700 psi of 4000 + 1200.
  CHECK(untold.strength_margin_fraction == doctest::Approx(700.0 / 5200.0));
  CHECK(sample_of(only(UncertainInput::wind_ratio, z), spread, untold).weather.wind_ratio_log ==
        doctest::Approx(std::log1p(spread.wind_ratio_fraction)));
  CHECK(sample_of(only(UncertainInput::base, z), spread, untold).base_k ==
        doctest::Approx(spread.base_k));
  CHECK(sample_of(only(UncertainInput::aggregate, z), spread, untold).mix.expansion_factor ==
        doctest::Approx(1.0 + spread.aggregate_expansion_fraction));
  const double doubted =
      sample_of(only(UncertainInput::strength, z), spread, untold).mix.strength_factor;
  // Two causes together: hypot(log 1.15, log 1.1346).
  CHECK(std::log(doubted) == doctest::Approx(std::hypot(0.13976, 0.12628)).epsilon(1e-3));
  job.site.measured_wind_ratio = 0.4;
  job.site.ground_c = 15.0;
  job.mix.strength_margin_psi = 900.0;
  job.mix.aggregate = Aggregate::granite;
  const SampleScale told = scale_of();
  CHECK(sample_of(only(UncertainInput::wind_ratio, z), spread, told).weather.wind_ratio_log == 0.0);
  CHECK(sample_of(only(UncertainInput::base, z), spread, told).base_k ==
        doctest::Approx(spread.base_measured_k));
  const Sample named = sample_of(only(UncertainInput::aggregate, z), spread, told);
  CHECK(named.mix.expansion_factor == 1.0);
  CHECK(named.practice.saw_strength_factor == 1.0);
  CHECK(sample_of(only(UncertainInput::strength, z), spread, told).mix.strength_factor ==
        doctest::Approx(1.0 + spread.strength_fraction));
}

TEST_CASE("the night's low is off by its own spread, half by the same cause as the day") {
  const SpreadRules spread = default_practice().spread;
  const double z = 1.2815515655446004;
  const auto night_k = [&](UncertainInput input) {
    const WeatherErrors errors = sample_of(only(input, z), spread, day_ahead()).weather;
    return errors.air_k + errors.night_air_k;
  };
  const double with_day = night_k(UncertainInput::air);
  CHECK(with_day == doctest::Approx(0.5 * spread.night_air_k));
  CHECK(std::hypot(with_day, night_k(UncertainInput::night_air)) ==
        doctest::Approx(spread.night_air_k));
}

TEST_CASE(
    "a crew and a saw of another mind move windows, and a window never closes before it opens") {
  const Practice practice = default_practice();
  const Practice other = with_errors(practice, {.ready_factor = 1.5,
                                                .too_stiff_factor = 0.8,
                                                .saw_strength_factor = 1.3,
                                                .stress_factor = 2.0});
  CHECK(other.window(Operation::stamp).opens_psi == doctest::Approx(60.0));
  CHECK(other.window(Operation::stamp).closes_psi == doctest::Approx(240.0));
  CHECK(other.saw.early_entry_opens_psi == doctest::Approx(195.0));
  CHECK(other.saw.wet_opens_medium_psi == doctest::Approx(650.0));
  CHECK(other.saw.cut_by_ratio == doctest::Approx(0.25));
  validate(other);
  validate(with_errors(practice, {.ready_factor = 9.0, .too_stiff_factor = 0.1}));
}

TEST_CASE("a warmer base sets its column sooner, and less bleeding time dries it sooner") {
  const Job job = small_job();
  const test::Planned planned = plan_of(job);
  const auto reached_s = [&](const Sample& sample) {
    const PourRun run = run_sampled(planned.run, sample, SolverSettings{});
    const ColumnHistory& history = run.histories[0];
    return first_reaches(history.time_s, history.resistance_middle_psi, 500.0).value();
  };
  Sample warm;
  warm.base_k = 3.0;
  // Observed: some 8 min for 3 K.
  CHECK(reached_s(warm) < reached_s(Sample{}) - 3.0 * 60.0);
  const PourRun run = run_sampled(planned.run, warm, SolverSettings{});
  CHECK(run.columns[0].column.ground.front().temperature_c ==
        doctest::Approx(planned.run.columns[0].column.ground.front().temperature_c + 3.0));
  CHECK(run.columns[0].column.ground.back().temperature_c ==
        doctest::Approx(planned.run.columns[0].column.ground.back().temperature_c).epsilon(0.02));
  Sample quick;
  quick.bleed_time_factor = 0.5;
  const ColumnHistory settled = run_sampled(planned.run, quick, SolverSettings{}).histories[0];
  CHECK(bleeding_ends(settled).value() < bleeding_ends(planned.run.histories[0]).value() - 1800.0);
}

TEST_CASE("a supplier's set times are surer than estimated ones") {
  const SpreadRules spread = default_practice().spread;
  const UncertainInputs slow = only(UncertainInput::set_time, 1.0);
  const SampleScale supplier{.set_times_estimated = false, .lead_at_start_h = 0.0};
  CHECK(sample_of(slow, spread, supplier).mix.set_time_factor <
        sample_of(slow, spread, day_ahead()).mix.set_time_factor);
}

TEST_CASE("a mix that the book knows is surer than one estimated, the more so after many pours") {
  const SpreadRules spread = default_practice().spread;
  const UncertainInputs slow = only(UncertainInput::set_time, 1.0);
  double before = sample_of(slow, spread, day_ahead()).mix.set_time_factor;
  for (const double log_deviation : {0.08, 0.04, 0.01}) {
    SampleScale learned = day_ahead();
    learned.learned_log_deviation = log_deviation;
    const double now = sample_of(slow, spread, learned).mix.set_time_factor;
    CHECK(now < before);
    before = now;
  }
  // The variation between batches remains: 10 % one time in ten, 1.2816 standard deviations.
  CHECK(before > std::exp(std::log(1.10) / 1.2816));
  SampleScale supplier{.set_times_estimated = false, .lead_at_start_h = 0.0};
  const double given = sample_of(slow, spread, supplier).mix.set_time_factor;
  supplier.learned_log_deviation = 0.08;
  CHECK(sample_of(slow, spread, supplier).mix.set_time_factor == given);
}

TEST_CASE("the day without errors is the plan's own, to the bit") {
  const Job job = small_job();
  const test::Planned planned = plan_of(job);
  const PourRun same = run_sampled(planned.run, Sample{}, SolverSettings{});
  REQUIRE(same.histories.size() == planned.run.histories.size());
  CHECK(same.histories[0].surface_c == planned.run.histories[0].surface_c);
  CHECK(same.histories[0].resistance_work_psi == planned.run.histories[0].resistance_work_psi);
  CHECK(same.order.loads[0].batched == planned.run.order.loads[0].batched);
  CHECK(same.zones[0].placing.end == planned.run.zones[0].placing.end);
}

TEST_CASE("a late truck moves loads, placings and columns") {
  const Job job = small_job();
  const test::Planned planned = plan_of(job);
  Sample late;
  late.delay_s = 1800.0;
  const PourRun run = run_sampled(planned.run, late, SolverSettings{});
  CHECK(seconds_between(planned.run.order.loads[0].batched, run.order.loads[0].batched) ==
        doctest::Approx(1800.0));
  CHECK(seconds_between(planned.run.zones[0].placing.start, run.zones[0].placing.start) ==
        doctest::Approx(1800.0));
  CHECK(run.histories[0].time_s[0] == doctest::Approx(planned.run.histories[0].time_s[0] + 1800.0));
  // The concrete is no older when placed.
  CHECK(run.histories[0].set_age_work_h[0] ==
        doctest::Approx(planned.run.histories[0].set_age_work_h[0]));
}

TEST_CASE("a truck so late that the forecast has ended sees nothing happen") {
  const Job job = small_job();
  const test::Planned planned = plan_of(job);
  Sample late;
  late.delay_s = 3.0 * planned.run.weather.grid.end_s();
  const PourRun run = run_sampled(planned.run, late, SolverSettings{});
  CHECK(run.histories[0].time_s.back() <= run.weather.grid.end_s());
  CHECK(run.histories[0].resistance_work_psi.back() < 10.0);
}

TEST_CASE("slower placing draws out what comes after the start") {
  Sample slow;
  slow.pace_factor = 1.5;
  CHECK(sampled_placing_s(1000.0, 1000.0, slow) == 1000.0);
  CHECK(sampled_placing_s(1600.0, 1000.0, slow) == doctest::Approx(1900.0));
}

}  // namespace
}  // namespace slabtide
