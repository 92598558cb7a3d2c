#include "seen_day.h"

#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

/// Enough to tell what the observations mean where no bands are asked for (ours).
constexpr std::size_t samples_without_bands = 60;

const OperationWindow* main_window(const DayPlan& plan, const Job& job, std::size_t zone) {
  return plan.zones[zone].whole.window(main_operation(job.zones[zone].finish));
}

double ahead_of(const DayPlan& before, const DayPlan& now, const Job& job) {
  double sum_min = 0.0;
  int count = 0;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const OperationWindow* planned = main_window(before, job, i);
    const OperationWindow* seen = main_window(now, job, i);
    if (planned == nullptr || seen == nullptr || !planned->opens || !seen->opens) continue;
    sum_min += seconds_between(*seen->opens, *planned->opens) / seconds_per_minute;
    ++count;
  }
  return count > 0 ? sum_min / count : 0.0;
}

std::string opening_words(const std::string& zone, const OperationWindow& window, const Job& job) {
  const Clock clock = clock_of(job);
  std::string words =
      fmt::format("{} now opens {}", zone, clock.time_seen_from(job.pour.date, *window.opens));
  const auto& band = window.opens_band;
  if (!band || !band->early || !band->late) return words;
  return fmt::format("{} ({})", words,
                     clock.span_seen_from(job.pour.date, *band->early, *band->late));
}

}  // namespace

SeenDay see_day(const PlannedPour& planned, const EnsembleSettings& asked) {
  EnsembleSettings settings = asked;
  if (asked.samples == 0) settings.samples = samples_without_bands;
  const Practice& practice = planned.practice;
  const SampleScale scale =
      sample_scale(planned.job, planned.run, planned.forecast, practice.spread);
  DayModel model(planned.job, planned.run, planned.plan, practice, scale);
  const std::vector<Sighting> sightings =
      sightings_of(planned.run, planned.plan, planned.journal, model, practice.reading);
  WeighedDays weighed = weigh_days(model, planned.run, sightings, practice.reading, settings);
  const UncertainInputs middle = weighed.mean();
  SolverSettings solver;
  solver.threads = settings.threads;
  SeenDay seen;
  const Sample likely = model.sample(middle);
  seen.run = run_sampled(planned.run, likely, solver);
  DayPlan plan = plan_day(planned.job, seen.run, with_errors(practice, likely.practice),
                          planned.forecast_age_h);
  for (const Sighting& one : weighed.counted) seen.observations_counted += one.readings.size();
  seen.misfits = std::move(weighed.misfits);
  seen.ahead_min = ahead_of(planned.plan, plan, planned.job);
  if (asked.samples == 0) {
    seen.plan = std::move(plan);
    return seen;
  }
  const DayModel shown(planned.job, planned.run, seen.run, plan, practice, scale);
  Ensemble ensemble{shown.zones(),
                    middle,
                    shown.on(middle),
                    weighed.uncertain_inputs,
                    {},
                    std::move(weighed.weights)};
  ensemble.days = solve_days(shown, ensemble.uncertain_inputs, settings);
  seen.plan = with_bands(std::move(plan), planned.job, ensemble);
  return seen;
}

std::string seen_words(const SeenDay& seen, const Job& job, UtcTime now) {
  const auto minutes = std::lround(std::abs(seen.ahead_min));
  std::string words = minutes == 0 ? std::string("the slab runs as planned")
                                   : fmt::format("the slab runs {} min {} the plan", minutes,
                                                 seen.ahead_min > 0.0 ? "ahead of" : "behind");
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const OperationWindow* window = main_window(seen.plan, job, i);
    if (window == nullptr || !window->opens || *window->opens < now) continue;
    words += fmt::format("; {}", opening_words(job.zones[i].name, *window, job));
  }
  return words;
}

}  // namespace slabtide
