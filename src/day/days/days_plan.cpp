#include "slabtide/day/days/days_plan.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <tuple>
#include <utility>

#include "candidate_days.h"
#include "core/parallel.h"
#include "core/rounded.h"
#include "slabtide/core/units.h"
#include "tried_start.h"

namespace slabtide {

namespace {

/// A smaller difference in the chance of loss decides nothing (ours).
constexpr double worth_chance = 0.1;
/// So many starts of a day at the most are tried on days drawn (ours): the best of the likely day,
/// and the next where that one turns out worse.
constexpr int max_starts_drawn = 3;

/// Whether `a` is to be preferred to `b`; `apart` says how far a day is from what was wished.
template <class Apart>
bool is_better(const ForecastDay& a, const ForecastDay& b, const CompareRules& rules,
               const Apart& apart) {
  if (better(a.stakes, b.stakes)) return true;
  if (better(b.stakes, a.stakes)) return false;
  const auto rest = [&](const ForecastDay& day) {
    return std::make_tuple(std::floor(rounded(day.loss_chance() / worth_chance)),
                           std::floor(rounded(day.late_min / rules.worth_min)), apart(day),
                           day.start);
  };
  return rest(a) < rest(b);
}

/// A start of one day, planned or still to be.
struct Start {
  std::size_t day = 0;  ///< index into the candidates
  UtcTime at;
  Parsed<ForecastDay> tried;
};

/// No start changes them.
std::vector<ZoneJoints> joints_of(const Job& job, const Practice& practice) {
  std::vector<ZoneJoints> joints;
  for (const Zone& zone : job.zones) joints.push_back(plan_joints(zone, job, practice.joints));
  return joints;
}

class DaysMaker {
 public:
  DaysMaker(const DaysCase& asked, const WeatherSeries& series, const DaysSettings& settings)
      : memo_(asked.job.obstacles, SiteLight::Keep::sky),
        cuts_(joints_of(asked.job, asked.practice)),
        shared_{asked, series, memo_, cuts_},
        settings_(settings) {}

  /// One entry for each candidate with starts; empty where none of them can be computed.
  std::vector<Parsed<ForecastDay>> best_of(const std::vector<CandidateDay>& candidates) {
    std::vector<Start> starts;
    for (std::size_t i = 0; i < candidates.size(); ++i) {
      for (const UtcTime at : candidates[i].starts) starts.push_back({i, at, {}});
    }
    in_parallel(starts.size(), settings_.threads,
                [&](std::size_t i) { starts[i].tried = tried(starts[i].at, 0); });
    std::vector<std::vector<Start>> of_day(candidates.size());
    for (Start& start : starts) of_day[start.day].push_back(std::move(start));
    std::vector<Parsed<ForecastDay>> best(candidates.size());
    in_parallel(of_day.size(), settings_.threads,
                [&](std::size_t i) { best[i] = best_start(std::move(of_day[i])); });
    return best;
  }

  std::size_t best_day(const std::vector<ForecastDay>& days) const {
    const Date own = shared_.asked.job.pour.date;
    const bool among_them = own >= days.front().date && own <= days.back().date;
    const Date wished = among_them ? own : days.front().date;
    return first_of(
        days, [wished](const ForecastDay& day) { return std::abs((day.date - wished).days()); });
  }

 private:
  template <class Apart>
  std::size_t first_of(const std::vector<ForecastDay>& days, const Apart& apart) const {
    const CompareRules& rules = shared_.asked.practice.compare;
    const auto best = std::min_element(
        days.begin(), days.end(),
        [&](const ForecastDay& a, const ForecastDay& b) { return is_better(a, b, rules, apart); });
    return static_cast<std::size_t>(best - days.begin());
  }

  Parsed<ForecastDay> tried(UtcTime at, std::size_t samples) {
    Parsed<ForecastDay> day = try_start(shared_, at, samples, settings_.fewer_of_many);
    const std::lock_guard<std::mutex> lock(mutex_);
    if (settings_.progress) settings_.progress(++done_);
    return day;
  }

  std::size_t best_by_clock(const std::vector<ForecastDay>& days) const {
    const TimeZone& zone = shared_.asked.job.site.time_zone;
    const Duration wished = zone.local_from_utc(shared_.asked.job.pour.start).time_of_day();
    return first_of(days, [&](const ForecastDay& day) {
      const Duration own = zone.local_from_utc(day.start).time_of_day();
      return std::abs((own - wished).total_seconds());
    });
  }

  /// The best start of a day. Days are drawn for the best of the likely day; where they make it
  /// worse than another, for that too.
  Parsed<ForecastDay> best_start(std::vector<Start> starts) {
    std::vector<TriedStart> told;
    std::vector<ForecastDay> days;
    for (Start& start : starts) {
      if (!start.tried.ok()) continue;
      days.push_back(std::move(*start.tried.value));
      told.push_back({start.at, days.back().judged.verdict});
    }
    if (days.empty())
      return starts.empty() ? Parsed<ForecastDay>{} : std::move(starts.front().tried);
    ForecastDay best =
        settings_.samples > 0 ? best_drawn(std::move(days), told) : days[best_by_clock(days)];
    best.starts = std::move(told);
    return {std::move(best), {}};
  }

  /// `told` are the starts of the days; those that are drawn get the verdict that this leaves.
  ForecastDay best_drawn(std::vector<ForecastDay> days, std::vector<TriedStart>& told) {
    std::vector<ForecastDay> drawn;
    while (drawn.size() < max_starts_drawn) {
      const std::size_t next = best_by_clock(days);
      if (days[next].days_drawn > 0) break;
      days[next] = std::move(*tried(days[next].start, settings_.samples).value);
      told[next].verdict = days[next].judged.verdict;
      drawn.push_back(days[next]);
    }
    return drawn[best_by_clock(drawn)];
  }

  PourMemo memo_;
  CutMemo cuts_;
  StartsCase shared_;
  const DaysSettings& settings_;
  std::mutex mutex_;
  std::size_t done_ = 0;
};

}  // namespace

Parsed<DaysPlan> plan_days(const DaysCase& asked, const DaysSettings& settings) {
  Parsed<WeatherSeries> series = WeatherSeries::from_forecast(asked.forecast);
  if (!series.ok()) return {std::nullopt, std::move(series.diagnostics)};
  const std::vector<CandidateDay> candidates = candidate_days(asked, *series.value);
  DaysMaker maker(asked, *series.value, settings);
  std::vector<Parsed<ForecastDay>> best = maker.best_of(candidates);
  DaysPlan plan;
  for (std::size_t i = 0; i < candidates.size(); ++i) {
    if (best[i].ok()) {
      plan.days.push_back(std::move(*best[i].value));
    } else if (candidates[i].starts.empty()) {
      plan.left_out.push_back({candidates[i].date, candidates[i].why_none});
    } else {
      plan.left_out.push_back({candidates[i].date, best[i].diagnostics.front().message});
    }
  }
  if (plan.days.empty()) {
    const auto faulty = std::find_if(best.begin(), best.end(), [](const Parsed<ForecastDay>& day) {
      return !day.diagnostics.empty();
    });
    if (faulty != best.end()) return {std::nullopt, std::move(faulty->diagnostics)};
    return {std::nullopt, {no_day_fault(asked, *series.value)}};
  }
  plan.best = maker.best_day(plan.days);
  return {std::move(plan), {}};
}

}  // namespace slabtide
