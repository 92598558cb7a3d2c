#include "joined_choices.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "choice_list.h"
#include "job_change.h"

namespace slabtide {

namespace {

/// So many pairs are computed (ours: more take time and hardly ever lead).
constexpr std::size_t max_joined = 6;

bool has(const std::vector<Caution>& fears, const Caution& caution) {
  return std::any_of(fears.begin(), fears.end(), [&caution](const Caution& other) {
    return other.code == caution.code && other.zone == caution.zone;
  });
}

double left_late(double ordered_min, double a_min, double b_min) {
  return std::max(0.0, a_min + b_min - ordered_min);
}

/// What two choices promise together.
ComparedChoice promise_of(const ComparedChoice& a, const ComparedChoice& b,
                          const ChoiceFigures& ordered, std::size_t zones) {
  ComparedChoice both;
  std::copy_if(a.figures.fears.begin(), a.figures.fears.end(),
               std::back_inserter(both.figures.fears),
               [&b](const Caution& caution) { return has(b.figures.fears, caution); });
  both.figures.stakes = stakes_of(both.figures.fears, zones);
  both.figures.expected_late_min = left_late(ordered.expected_late_min, a.figures.expected_late_min,
                                             b.figures.expected_late_min);
  both.figures.bad_day_late_min =
      left_late(ordered.bad_day_late_min, a.figures.bad_day_late_min, b.figures.bad_day_late_min);
  both.figures.dark_min = left_late(ordered.dark_min, a.figures.dark_min, b.figures.dark_min);
  both.cost.disturbance = a.cost.disturbance + b.cost.disturbance;
  return both;
}

/// A pair of singles, and what it promises.
struct Pair {
  const ComparedChoice* a = nullptr;
  const ComparedChoice* b = nullptr;
  OptionNote change;
  ComparedChoice promise;
};

bool can_join(const ComparedChoice& compared) {
  return compared.choice.change && compared.choice.kind != ChoiceKind::as_ordered &&
         compared.choice.kind != ChoiceKind::own;
}

const ComparedChoice& best_single(const std::vector<ComparedChoice>& singles,
                                  const CompareRules& rules) {
  return *std::min_element(singles.begin(), singles.end(),
                           [&rules](const auto& a, const auto& b) { return better(a, b, rules); });
}

std::vector<Pair> promising(const PlannedPour& ordered, const ChoiceFigures& as_ordered,
                            const std::vector<ComparedChoice>& singles) {
  const CompareRules& rules = ordered.practice.compare;
  const ComparedChoice& best = best_single(singles, rules);
  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < singles.size(); ++i) {
    if (!can_join(singles[i])) continue;
    for (std::size_t k = i + 1; k < singles.size(); ++k) {
      if (!can_join(singles[k])) continue;
      auto change = joined_change(*singles[i].choice.change, *singles[k].choice.change);
      if (!change) continue;
      ComparedChoice promise =
          promise_of(singles[i], singles[k], as_ordered, ordered.job.zones.size());
      if (!better(promise, best, rules)) continue;
      pairs.push_back({&singles[i], &singles[k], std::move(*change), std::move(promise)});
    }
  }
  std::stable_sort(pairs.begin(), pairs.end(), [&rules](const Pair& a, const Pair& b) {
    return better(a.promise, b.promise, rules);
  });
  if (pairs.size() > max_joined) pairs.resize(max_joined);
  return pairs;
}

}  // namespace

Choices find_joined_choices(const PlannedPour& ordered, const ChoiceFigures& as_ordered,
                            const std::vector<ComparedChoice>& singles) {
  const ChoiceContext context{ordered, as_ordered};
  ChoiceList list(context);
  for (Pair& pair : promising(ordered, as_ordered, singles)) {
    const Choice& a = pair.a->choice;
    const Choice& b = pair.b->choice;
    list.offer({ChoiceKind::several,
                fmt::format("{}, {}", a.brief, b.brief),
                {},
                fmt::format("{} and {}", a.words, b.words),
                std::move(pair.change)});
  }
  return list.take();
}

}  // namespace slabtide
