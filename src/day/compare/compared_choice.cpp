#include "slabtide/day/compare/compared_choice.h"

#include <array>
#include <cmath>
#include <tuple>

#include "core/rounded.h"

namespace slabtide {

namespace {

// Lateness in the unit of trouble, in which another worker for the day is 3 (`choice_cost.cpp`),
// all ours: ten minutes late on average often lose a finish, which is worth more than a worker or
// two; a bad day, one in ten, weighs a third of the average.
constexpr double trouble_per_average_min = 0.5;
constexpr double trouble_per_bad_day_min = 0.15;

/// What choices are ranked by, the weightiest first.
using Rank = std::tuple<std::array<int, loss_count>, double, double>;

double money_of(const ComparedChoice& compared) {
  if (!compared.money) return 0.0;
  return rounded(compared.money->expected().value_or(compared.money->likely()));
}

/// Of the minutes late, in whole steps of what is worth a change, and of the work in the dark.
double late_trouble(const ChoiceFigures& figures, const CompareRules& rules) {
  const double dark_min = rules.dark_late_fraction * figures.dark_min;
  const auto counted_min = [&](double late_min) {
    return rules.worth_min * std::floor(rounded((late_min + dark_min) / rules.worth_min));
  };
  return trouble_per_average_min * counted_min(figures.expected_late_min) +
         trouble_per_bad_day_min * counted_min(figures.bad_day_late_min);
}

Rank rank(const ComparedChoice& compared, const CompareRules& rules) {
  const ChoiceFigures& figures = compared.figures;
  return {figures.stakes.stops,
          rounded(late_trouble(figures, rules) + compared.cost.disturbance +
                  figures.stakes.caution_cost),
          money_of(compared)};
}

}  // namespace

bool better(const ComparedChoice& a, const ComparedChoice& b, const CompareRules& rules) {
  return rank(a, rules) < rank(b, rules);
}

}  // namespace slabtide
