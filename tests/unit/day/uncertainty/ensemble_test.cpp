#include "slabtide/day/uncertainty/ensemble.h"

#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "slabtide/day/uncertainty/bands.h"
#include "support/plain_forecast.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

using test::plan_of;
using test::Planned;
using test::rectangle;
using test::sample_job;
using test::zone_named;

constexpr SampleScale evening_before{.set_times_estimated = true, .lead_at_start_h = 16.0};

/// A pad with a step face and a border, whose west side the house shades in the afternoon.
Job shaded_job() {
  Zone pad = zone_named("pad", rectangle(0, 0, 3.0, 2.4), Finish::stamp);
  pad.border = Border{0.4, Finish::broom};
  FormedFace face;
  face.length_m = 3.0;
  face.height_m = 0.18;
  face.facing_deg = 180.0;
  pad.faces = {face};
  Job job = sample_job({pad});
  job.obstacles = {testing::wall({-0.5, -10.0}, {-0.5, 12.0}, 5.0)};
  return job;
}

Ensemble ensemble_of(const Job& job, const Planned& planned, std::size_t samples, int threads = 0,
                     SampleScale scale = evening_before) {
  const Practice practice = default_practice();
  const DayModel model(job, planned.run, planned.plan, practice, scale);
  EnsembleSettings settings;
  settings.samples = samples;
  settings.threads = threads;
  return sample_days(model, settings);
}

/// The times of a plan that have bands, in a fixed order.
struct Banded {
  std::string name;
  std::optional<UtcTime> at;
  std::optional<TimeBand> band;
};

void take(std::vector<Banded>& times, const PartPlan& part) {
  for (const OperationWindow& window : part.windows) {
    if (window.operation > Operation::walk) continue;
    const std::string name(operation_id(window.operation));
    times.push_back({name + " opens", window.opens, window.opens_band});
    times.push_back({name + " all over", window.open_all_over, window.all_over_band});
    times.push_back({name + " closes", window.closes, window.closes_band});
  }
  times.push_back({"sheen", part.sheen_gone, part.sheen_band});
  times.push_back({"initial set", part.initial_set, part.initial_band});
  times.push_back({"final set", part.final_set, part.final_band});
}

std::vector<Banded> banded_times(const ZonePlan& zone) {
  std::vector<Banded> times;
  take(times, zone.whole);
  for (const PartPlan& part : zone.parts) take(times, part);
  take(times, *zone.border);
  times.push_back({"strip", zone.faces[0].strip.opens, zone.faces[0].strip.opens_band});
  times.push_back({"saw", zone.saws[0].opens, zone.saws[0].opens_band});
  return times;
}

double minutes_apart(const std::optional<UtcTime>& a, const std::optional<UtcTime>& b) {
  REQUIRE(a);
  REQUIRE(b);
  return std::abs(seconds_between(*a, *b)) / 60.0;
}

TEST_CASE("the bands are those of every cell solved for every day") {
  const Job job = shaded_job();
  Planned planned = plan_of(job);
  planned.plan.zones[0].saws = test::uncut_saws(job, planned);
  const Practice practice = default_practice();
  constexpr std::size_t samples = 20;
  const DayModel model(job, planned.run, planned.plan, practice, evening_before);
  EnsembleSettings settings;
  settings.samples = samples;
  const Ensemble ensemble = sample_days(model, settings);
  const DayPlan plan = with_bands(planned.plan, job, ensemble);
  const std::vector<Banded> quick = banded_times(plan.zones[0]);

  std::vector<std::vector<Weighted>> full(quick.size());
  for (const UncertainInputs& uncertain_inputs : ensemble.uncertain_inputs) {
    const Sample sample = model.sample(uncertain_inputs);
    const PourRun run = run_sampled(planned.run, sample, SolverSettings{});
    const std::vector<Banded> day = banded_times(
        plan_zone(job.zones[0], run.zones[0], job, run, with_errors(practice, sample.practice)));
    if (day.size() != quick.size()) continue;  // a day on which the zone is divided differently
    for (std::size_t i = 0; i < day.size(); ++i) {
      const auto at_s =
          day[i].at ? std::optional(seconds_between(planned.run.weather.grid.start, *day[i].at))
                    : std::nullopt;
      full[i].push_back({at_s, 1.0});
    }
  }
  double worst_min = 0.0;
  for (std::size_t i = 0; i < quick.size(); ++i) {
    if (!quick[i].band || full[i].size() < samples) continue;
    // How far off is in proportion to how much the times move: the saw's by hours.
    const double max_min = std::fmax(3.0, 0.05 * *band_minutes(*quick[i].band));
    const auto near = [&](const std::optional<UtcTime>& at, double fraction) {
      const auto full_s = weighted_quantile(full[i], fraction);
      REQUIRE(full_s);
      const double apart = minutes_apart(at, planned.run.at(*full_s));
      CAPTURE(quick[i].name);
      CHECK(apart < max_min);
      worst_min = std::fmax(worst_min, apart);
    };
    near(quick[i].band->early, 0.1);
    near(quick[i].band->likely, 0.5);
    near(quick[i].band->late, 0.9);
  }
  // Observed: see the message; on the spring demo job (60 days, every part) finishing windows and
  // set times differ by up to 2.0 min, the time a cut is due by up to 5, and washing by up to 12.
  MESSAGE("worst disagreement with the full computation, min: ", worst_min);
}

TEST_CASE("any number of threads gives the same days") {
  const Job job = shaded_job();
  const Planned planned = plan_of(job);
  const Ensemble one = ensemble_of(job, planned, 12, 1);
  const Ensemble three = ensemble_of(job, planned, 12, 3);
  for (std::size_t i = 0; i < one.days.size(); ++i) {
    for (std::size_t c = 0; c < one.days[i].size(); ++c) {
      CHECK(one.days[i][c].final_set_s == three.days[i][c].final_set_s);
      CHECK(one.days[i][c].sheen_gone_s == three.days[i][c].sheen_gone_s);
    }
  }
}

TEST_CASE("the likely time stands near the plan's own") {
  const Job job = shaded_job();
  const Planned planned = plan_of(job);
  const DayPlan plan = with_bands(planned.plan, job, ensemble_of(job, planned, 100));
  const OperationWindow& stamp = test::window_of(plan.zones[0].whole, Operation::stamp);
  REQUIRE(stamp.opens_band);
  const double apart = minutes_apart(stamp.opens_band->likely, stamp.opens);
  MESSAGE("likely less planned, min: ", apart);
  CHECK(apart < 8.0);  // observed: 3 to 5; trucks are late more often than early
  CHECK(*stamp.opens_band->early < *stamp.opens_band->likely);
  CHECK(*stamp.opens_band->likely < *stamp.opens_band->late);
  CHECK(stamp.opens_band->fraction == 1.0);
}

TEST_CASE("bands widen with lead time") {
  const Job job = shaded_job();
  const Planned planned = plan_of(job);
  double last_min = 0.0;
  for (const double lead_h : {0.0, 24.0, 72.0, 144.0}) {
    const SampleScale scale{.set_times_estimated = false, .lead_at_start_h = lead_h};
    const DayPlan plan = with_bands(planned.plan, job, ensemble_of(job, planned, 800, 0, scale));
    const double width_min = plan.sureness->either_way_min.value();
    MESSAGE("forecast ", lead_h, " h old: within ", width_min, " min either way");
    CHECK(width_min > last_min);
    last_min = width_min;
  }
}

TEST_CASE("a supplier's set times make a plan surer") {
  const Job job = shaded_job();
  const Planned planned = plan_of(job);
  const SampleScale supplier{.set_times_estimated = false, .lead_at_start_h = 16.0};
  const DayPlan estimated = with_bands(planned.plan, job, ensemble_of(job, planned, 60));
  const DayPlan given = with_bands(planned.plan, job, ensemble_of(job, planned, 60, 0, supplier));
  CHECK(given.sureness->either_way_min.value() < 0.95 * estimated.sureness->either_way_min.value());
}

TEST_CASE("a time that never comes has a band that says so") {
  const Job job = shaded_job();
  Planned planned = plan_of(job);
  Ensemble ensemble = ensemble_of(job, planned, 10);
  for (std::size_t i = 0; i < ensemble.days.size(); ++i) {
    if (i < 4) continue;  // on four days in ten it still happens
    for (ColumnEvents& column : ensemble.days[i]) column.window(Operation::stamp).opens_s.reset();
  }
  const DayPlan plan = with_bands(planned.plan, job, ensemble);
  const OperationWindow& stamp = test::window_of(plan.zones[0].whole, Operation::stamp);
  REQUIRE(stamp.opens_band);
  CHECK(stamp.opens_band->fraction == doctest::Approx(0.4));
  CHECK(stamp.opens_band->early);
  CHECK_FALSE(stamp.opens_band->likely);
  CHECK_FALSE(stamp.opens_band->late);
  // Then there is no figure in minutes for how sure it is.
  CHECK_FALSE(plan.sureness->either_way_min);
  CHECK(sure_word(*plan.sureness) == SureWord::hardly);
}

}  // namespace
}  // namespace slabtide
