#include "slabtide/day/compare/compared_choice.h"

#include <array>
#include <cmath>
#include <tuple>

#include "core/rounded.h"

namespace slabtide {

namespace {

/// What choices are ranked by, the weightiest first.
using Rank = std::tuple<std::array<int, loss_count>, double, double, double, double>;

double money_of(const ComparedChoice& compared) {
  if (!compared.money) return 0.0;
  return rounded(compared.money->expected().value_or(compared.money->likely()));
}

Rank rank(const ComparedChoice& compared, const CompareRules& rules) {
  const ChoiceFigures& figures = compared.figures;
  const auto steps = [&rules](double minutes) {
    return std::floor(rounded(minutes / rules.worth_min));
  };
  return {figures.stakes.stops, steps(figures.expected_late_min), steps(figures.bad_day_late_min),
          rounded(compared.cost.disturbance + figures.stakes.caution_cost), money_of(compared)};
}

}  // namespace

bool better(const ComparedChoice& a, const ComparedChoice& b, const CompareRules& rules) {
  return rank(a, rules) < rank(b, rules);
}

}  // namespace slabtide
