#include "tried_start.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "day/plan/caution_watch.h"
#include "day/pour/pour_span.h"
#include "moved_job.h"
#include "slabtide/core/units.h"
#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/day/uncertainty/bands.h"

namespace slabtide {

namespace {

DayPlan planned(const PlannedPour& pour, const StartsCase& shared, CrewDepth depth) {
  return plan_day(pour.job, pour.run, pour.practice, pour.forecast_age_h, {depth, &shared.cuts});
}

/// The finishers to plan with: the job's, or as many as are never late if these can be found.
int finishers_for(const CrewPlan& crew, int own, int more) {
  const auto& smallest = crew.smallest_crew;
  return smallest && *smallest > own && *smallest <= own + more ? *smallest : own;
}

void add_weather(ForecastDay& day, const PlannedPour& pour) {
  const WeatherLimits& limits = pour.practice.limits;
  const PlasticSpan soft = plastic_span(pour.run, pour.plan.zones);
  day.weather = summarise_weather(pour.run);
  day.set = soft.to;
  day.rain_before_set = rain_between(pour.run, soft.from, soft.to, limits);
  const UtcTime end = after_seconds(day.start, pour.practice.days.reach_h * seconds_per_hour);
  day.rain_after_set = rain_between(pour.run, soft.to, std::max(soft.to, end), limits);
  day.frost.min_surface_c = std::numeric_limits<double>::infinity();
  for (const ZonePlan& zone : pour.plan.zones) {
    const FrostRisk& frost = zone.frost;
    if (frost.at) day.frost.at = std::min(day.frost.at.value_or(*frost.at), *frost.at);
    day.frost.min_surface_c = std::min(day.frost.min_surface_c, frost.min_surface_c);
  }
}

ForecastDay day_of(const PlannedPour& pour, int own_finishers) {
  ForecastDay day;
  day.date = pour.job.pour.date;
  day.start = pour.job.pour.start;
  day.first_batched = placing_span(pour.run.order).first_batched;
  day.call_off_by = call_off_by(day.first_batched, pour.practice.days);
  day.judged = judge(pour.plan.cautions);
  day.stakes = stakes_of(pour.plan.cautions, pour.job.zones.size());
  day.finishers = pour.job.crew.finishers;
  day.stakes.cautions[static_cast<std::size_t>(Loss::money)] += day.finishers - own_finishers;
  std::copy_if(pour.plan.cautions.begin(), pour.plan.cautions.end(),
               std::back_inserter(day.cautions),
               [](const Caution& caution) { return caution.level != CautionLevel::note; });
  day.late_min = pour.plan.crew.schedule.late_min;
  day.finish_lost_fraction = pour.plan.crew.finish_lost_fraction;
  if (pour.plan.frost) day.frost_fraction = pour.plan.frost->any_fraction;
  day.cost = cost_of_pour(pour);
  add_weather(day, pour);
  return day;
}

}  // namespace

Parsed<ForecastDay> try_start(const StartsCase& shared, UtcTime start, std::size_t samples,
                              bool fewer_of_many) {
  const DaysCase& asked = shared.asked;
  SolverSettings solver;
  solver.threads = 1;  // the starts are computed in parallel
  Job job = moved_to(asked.job, start);
  assume_concrete_temperature(job, shared.series);
  Parsed<PourRun> run =
      run_pour(job, shared.series, asked.practice, solver, {max_cells_of_many, &shared.memo});
  if (!run.ok()) return {std::nullopt, std::move(run.diagnostics)};
  PlannedPour pour{std::move(job), asked.forecast, asked.practice, std::move(*run.value), {}};
  pour.forecast_age_h = asked.forecast_age_h;
  pour.plan = planned(pour, shared, CrewDepth::other_crews);
  const auto smallest = pour.plan.crew.smallest_crew;
  const int own = asked.job.crew.finishers;
  pour.job.crew.finishers = finishers_for(pour.plan.crew, own, asked.practice.days.more_finishers);
  if (pour.job.crew.finishers != own) pour.plan = planned(pour, shared, CrewDepth::own_crew);
  const std::size_t drawn = fewer_of_many ? samples_for(pour.plan, samples) : samples;
  if (samples > 0) {
    const Ensemble days = sampled_days(pour, {drawn, 1, {}});  // before the plan is moved from
    pour.plan = with_bands(std::move(pour.plan), pour.job, days);
  }
  ForecastDay day = day_of(pour, own);
  day.smallest_crew = smallest;
  day.days_drawn = samples > 0 ? drawn : 0;
  return {std::move(day), {}};
}

}  // namespace slabtide
