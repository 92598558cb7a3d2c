#include "slabtide/day/compare/comparison.h"

#include <iterator>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <utility>

#include "core/parallel.h"
#include "day/joints/cut_memo.h"
#include "day/pour/pour_memo.h"
#include "joined_choices.h"
#include "own_days.h"
#include "slabtide/job/geometry/cells.h"

namespace slabtide {

namespace {

/// Groups choices whose concrete has the same history, so that one computed pour serves them all.
std::vector<std::vector<std::size_t>> groups_of(const std::vector<Choice>& choices) {
  std::vector<std::vector<std::size_t>> groups;
  std::map<std::string, std::size_t> group_of;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    const auto [group, is_new] =
        group_of.try_emplace(pour_signature(choices[i].job), groups.size());
    if (is_new) groups.emplace_back();
    groups[group->second].push_back(i);
  }
  return groups;
}

/// A choice's figures, or why it has none.
struct Outcome {
  std::optional<ComparedChoice> compared;
  std::string fault;
};

/// Computes groups of choices and compares them with the job as ordered.
class Comparing {
 public:
  Comparing(const PlannedPour& ordered, const CompareSettings& settings)
      : ordered_(ordered),
        series_(WeatherSeries::from_forecast(ordered.forecast).value.value()),
        settings_(settings),
        cut_coarser_(cell_size_for(ordered.job, max_cells_of_many) > cell_size_for(ordered.job)),
        memo_(ordered.job.obstacles, SiteLight::Keep::all),
        cuts_(ordered.plan.cuts.joints) {}

  std::vector<Outcome> run(const std::vector<Choice>& choices) {
    const auto groups = groups_of(choices);
    std::vector<Outcome> outcomes(choices.size());
    in_parallel(groups.size(), settings_.threads,
                [&](std::size_t g) { run_group(groups[g], choices, outcomes); });
    return outcomes;
  }

 private:
  void run_group(const std::vector<std::size_t>& group, const std::vector<Choice>& choices,
                 std::vector<Outcome>& outcomes) {
    const Choice& first = choices[group.front()];
    const bool is_ordered = first.kind == ChoiceKind::as_ordered && !cut_coarser_;
    SolverSettings solver;
    solver.threads = 1;
    Parsed<PourRun> pour;
    if (!is_ordered) {
      pour = run_pour(first.job, series_, ordered_.practice, solver, {max_cells_of_many, &memo_});
    }
    bool days_wanted = first.kind != ChoiceKind::as_ordered && settings_.ensemble != nullptr;
    std::unique_ptr<const OwnDays> days;
    for (const std::size_t i : group) {
      if (is_ordered || pour.ok()) {
        const PourRun& run = is_ordered ? ordered_.run : *pour.value;
        outcomes[i].compared = compared(choices[i], run, days_wanted, days);
      } else {
        outcomes[i].fault = pour.diagnostics.front().message;
      }
    }
    const std::lock_guard<std::mutex> lock(mutex_);
    if (settings_.progress) settings_.progress(++done_);
  }

  /// The first plan of a group solves its own pour on the possible days, if that is wanted.
  ComparedChoice compared(const Choice& choice, const PourRun& pour, bool& days_wanted,
                          std::unique_ptr<const OwnDays>& days) {
    // No choice changes anything that the joints depend on.
    const PlanScope scope{CrewDepth::other_crews, &cuts_};
    const DayPlan plan =
        plan_day(choice.job, pour, ordered_.practice, ordered_.forecast_age_h, scope);
    if (std::exchange(days_wanted, false)) {
      days = OwnDays::solve(choice.job, ordered_.forecast, ordered_.practice, pour, plan,
                            *settings_.ensemble);
    }
    ChoiceFigures figures = figures_of(choice.job, plan, settings_.days_for(ordered_.plan),
                                       days ? std::optional(days->days()) : std::nullopt);
    auto money =
        cost_of_pour(choice.job, pour.order, plan, figures.zone_lost_fractions, ordered_.job.mix);
    return {choice, std::move(figures),
            cost_of(ordered_.job, ordered_.run.order, choice.job, pour.order), std::move(money)};
  }

  const PlannedPour& ordered_;
  const WeatherSeries series_;
  const CompareSettings& settings_;
  /// Then the job as ordered is computed again, so that all are cut alike.
  const bool cut_coarser_;
  PourMemo memo_;
  CutMemo cuts_;
  std::mutex mutex_;
  std::size_t done_ = 0;
};

std::size_t best_of(const std::vector<ComparedChoice>& choices, const CompareRules& rules) {
  std::size_t best = 0;
  for (std::size_t i = 1; i < choices.size(); ++i) {
    if (better(choices[i], choices[best], rules)) best = i;
  }
  return best;
}

}  // namespace

std::vector<CostPart> parts_left_out(const Comparison& comparison) {
  std::set<CostPart> parts;
  for (const ComparedChoice& one : comparison.choices) {
    if (one.money) parts.insert(one.money->left_out.begin(), one.money->left_out.end());
  }
  return {parts.begin(), parts.end()};
}

Comparison compare_choices(const PlannedPour& ordered, const CompareSettings& settings) {
  const ChoiceFigures as_ordered =
      figures_of(ordered.job, ordered.plan, settings.days_for(ordered.plan));
  Comparing comparing(ordered, settings);
  Comparison comparison;
  const auto compare = [&](Choices choices) {
    auto outcomes = comparing.run(choices.tried);
    std::move(choices.left_out.begin(), choices.left_out.end(),
              std::back_inserter(comparison.left_out));
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
      if (outcomes[i].compared) {
        comparison.choices.push_back(std::move(*outcomes[i].compared));
      } else {
        comparison.left_out.push_back({choices.tried[i].label, std::move(outcomes[i].fault)});
      }
    }
  };
  compare(find_choices(ordered, as_ordered));
  compare(find_joined_choices(ordered, as_ordered, comparison.choices));
  if (settings.ensemble != nullptr) comparison.days_sampled = settings.ensemble->days.size();
  comparison.best = best_of(comparison.choices, ordered.practice.compare);
  return comparison;
}

}  // namespace slabtide
