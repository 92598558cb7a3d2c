#include "slabtide/day/compare/choice_figures.h"

#include <algorithm>
#include <utility>

#include "day/uncertainty/drawn_cautions.h"
#include "day/uncertainty/frost_days.h"
#include "day/uncertainty/late_days.h"
#include "slabtide/core/units.h"
#include "weather/sky/nights.h"

namespace slabtide {

namespace {

void find_windows(ChoiceFigures& figures, const Job& job, const DayPlan& plan) {
  for (std::size_t i = 0; i < plan.zones.size(); ++i) {
    const OperationWindow* window = plan.zones[i].whole.window(main_operation(job.zones[i].finish));
    if (window == nullptr) continue;
    if (window->opens && (!figures.first_window || *window->opens < *figures.first_window)) {
      figures.first_window = window->opens;
    }
    if (window->closes && (!figures.last_window || *window->closes > *figures.last_window)) {
      figures.last_window = window->closes;
    }
  }
}

void find_tops(ChoiceFigures& figures, const DayPlan& plan) {
  for (const ZonePlan& zone : plan.zones) {
    figures.peak_evaporation_kg_m2_h =
        std::max(figures.peak_evaporation_kg_m2_h, zone.whole.peak_evaporation_kg_m2_h);
    if (zone.whole.early_sheen_at) ++figures.early_sheens;
    if (zone.whole.crust_at) ++figures.crusts;
  }
}

void find_saw(ChoiceFigures& figures, const Job& job, const DayPlan& plan) {
  for (const ZonePlan& zone : plan.zones) {
    if (zone.saws.empty()) continue;
    const auto& latest = zone.saws.front().latest;
    if (latest && (!figures.latest_saw || *latest < *figures.latest_saw)) {
      figures.latest_saw = latest;
    }
  }
  if (!figures.latest_saw) return;
  const SunTimes sun =
      sun_times_about(*figures.latest_saw, job.site.latitude_deg, job.site.longitude_deg);
  figures.saw_at_night = sun.kind == SunTimes::Kind::never_up ||
                         (sun.kind == SunTimes::Kind::ordinary &&
                          (*figures.latest_saw < sun.rise || *figures.latest_saw > sun.set));
}

void find_crew(ChoiceFigures& figures, const CrewPlan& crew) {
  figures.minutes_late = crew.schedule.late_min;
  figures.smallest_crew = crew.smallest_crew;
  figures.crew_hours = crew.crew_hours();
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    if (crew.tasks[i].later || crew.tasks[i].kind == TaskKind::clean_up) continue;
    if (!figures.last_finish || crew.ends[i] > *figures.last_finish) {
      figures.last_finish = crew.ends[i];
    }
  }
}

/// How much of the time from the first work on the pour to the last of its finishing is in the
/// dark.
double dark_min(const Job& job, const CrewPlan& crew, UtcTime last_finish) {
  const UtcTime first = *std::min_element(crew.starts.begin(), crew.starts.end());
  double dark_s = 0.0;
  if (first >= last_finish) return 0.0;
  for (const TimeSpan& night : nights_between(first, last_finish, job.site)) {
    // A night cut off at either end has no dusk or dawn there.
    const double dusk_s = night.from > first ? twilight_s : 0.0;
    const double dawn_s = night.to < last_finish ? twilight_s : 0.0;
    dark_s += std::max(0.0, seconds_between(night.from, night.to) - dusk_s - dawn_s);
  }
  return dark_s / seconds_per_minute;
}

void weigh_cautions(ChoiceFigures& figures, const std::vector<Caution>& cautions,
                    std::size_t zones) {
  for (const Caution& caution : cautions) {
    int& count = caution.level == CautionLevel::stop      ? figures.stops
                 : caution.level == CautionLevel::caution ? figures.cautions
                                                          : figures.notes;
    ++count;
    if (caution.level != CautionLevel::note) figures.fears.push_back(caution);
  }
  figures.judgement = judge(cautions);
  figures.stakes = stakes_of(cautions, zones);
}

/// The plan's cautions, with those of a finish lost and of a frost too often over the sampled days;
/// a plan with bands has them already.
std::vector<Caution> cautions_of(const Job& job, const DayPlan& plan, const LateDays& late,
                                 const std::optional<SampledDays>& drawn) {
  std::vector<Caution> cautions = plan.cautions;
  if (!drawn || plan.sureness) return cautions;
  add_drawn_cautions(cautions, job, plan, late.lost_chances,
                     frost_days(plan.zones, drawn->ensemble));
  return cautions;
}

LateDays late_on(const CrewPlan& crew, const SampledDays& drawn,
                 const std::optional<SampledDays>& own) {
  LateDays late = late_days(crew, drawn.plan, drawn.ensemble);
  if (!own) return late;
  const Ensemble few = first_days(drawn.ensemble, own->ensemble.days.size());
  return put_right(std::move(late), late_days(crew, drawn.plan, few),
                   late_days(crew, own->plan, own->ensemble));
}

}  // namespace

ChoiceFigures figures_of(const Job& job, const DayPlan& plan,
                         const std::optional<SampledDays>& drawn,
                         const std::optional<SampledDays>& own) {
  ChoiceFigures figures;
  find_windows(figures, job, plan);
  find_tops(figures, plan);
  find_saw(figures, job, plan);
  find_crew(figures, plan.crew);
  const LateDays late = drawn
                            ? late_on(plan.crew, *drawn, own)
                            : LateDays{figures.minutes_late, figures.minutes_late, {}, {}, 0.0, {}};
  weigh_cautions(figures, cautions_of(job, plan, late, own ? own : drawn), job.zones.size());
  if (drawn) {
    figures.lost_fraction = late.finish_lost_fraction;
    figures.zone_lost_fractions = late.zone_lost_fractions;
  }
  figures.expected_late_min = late.expected_min;
  figures.bad_day_late_min = late.bad_day_min;
  if (figures.last_finish) figures.dark_min = dark_min(job, plan.crew, *figures.last_finish);
  if (figures.last_finish && plan.sun.kind == SunTimes::Kind::ordinary) {
    figures.daylight_left_min =
        seconds_between(*figures.last_finish, plan.sun.set) / seconds_per_minute;
  }
  return figures;
}

}  // namespace slabtide
