#include "admixture_choices.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "admixture_change.h"

namespace slabtide {

namespace {

constexpr double half = 0.5;
constexpr double third = 1.0 / 3.0;
/// Slightly more than the fraction, so that rounding does not leave a third load.
constexpr double load_ease = 1.0 + 1e-9;

std::vector<std::size_t> sunny_zones(const ChoiceContext& context) {
  std::vector<std::size_t> sunny;
  for (std::size_t i = 0; i < context.plan.zones.size(); ++i) {
    if (context.plan.zones[i].whole.sunlit_fraction >= context.rules.sunny_fraction)
      sunny.push_back(i);
  }
  return sunny;
}

std::string zone_names(const Job& job, const std::vector<std::size_t>& zones) {
  std::string names;
  for (const std::size_t i : zones) names += (names.empty() ? "" : ", ") + job.zones[i].name;
  return names;
}

void add_last(const ChoiceContext& context, const Admixture& retarder, double fraction,
              const std::string& part, ChoiceList& list) {
  const LastLoads last = in_last_fraction(context.job, context.run.order, {retarder}, fraction);
  const UnitSystem units = context.job.units;
  std::string words =
      fmt::format("put retarder at {} {}", dose_words(retarder, units), last_loads_words(last));
  if (context.run.order.loads.size() == 1) {
    words = fmt::format(
        "order the concrete in two loads, the second the last {} of it, with "
        "retarder at {} in that",
        part, dose_words(retarder, units));
  }
  list.add(ChoiceKind::admixture,
           fmt::format("retarder {}, last {}", dose_label(retarder, units), part), std::move(words),
           last.job);
}

void add_sunny(const ChoiceContext& context, const Admixture& retarder, ChoiceList& list) {
  const UnitSystem units = context.job.units;
  const std::string label = fmt::format("retarder {}, in the sun", dose_label(retarder, units));
  const auto sunny = sunny_zones(context);
  if (sunny.empty()) {
    list.leave_out(label, "no zone lies in the sun for long");
  } else if (sunny.size() == context.job.zones.size()) {
    list.leave_out(label, "every zone lies in the sun: the same as in every load");
  } else if (!context.job.order.loads.empty()) {
    list.leave_out(label, "loads have admixtures of their own, which come before a zone's");
  } else {
    list.add(ChoiceKind::admixture, label,
             fmt::format("put retarder at {} in the sunny zones alone ({})",
                         dose_words(retarder, units), zone_names(context.job, sunny)),
             in_zones(context.job, sunny, {retarder}));
  }
}

void add_everywhere(const ChoiceContext& context, const Admixture& admixture, ChoiceList& list) {
  const UnitSystem units = context.job.units;
  const std::string name(admixture_words(admixture.kind));
  Job job = context.job;
  change_all_admixtures(job, [&](const auto&) { return std::vector{admixture}; });
  list.add(ChoiceKind::admixture,
           fmt::format("{} {}{}", name, dose_label(admixture, units),
                       admixture.kind == AdmixtureKind::retarder ? ", all loads" : ""),
           fmt::format("put {} at {} in every load", name, dose_words(admixture, units)),
           std::move(job));
}

}  // namespace

Admixture retarder_of(double dose_ml_100kg) {
  Admixture retarder;
  retarder.kind = AdmixtureKind::retarder;
  retarder.dose_ml_100kg = dose_ml_100kg;
  return retarder;
}

LastLoads in_last_count(const Job& job, std::size_t of, const std::vector<Admixture>& admixtures,
                        std::size_t number) {
  LastLoads last{job, number, of};
  for (std::size_t load = of - number + 1; load <= of; ++load) {
    const auto is_it = [load](const LoadNote& note) {
      return note.number == static_cast<int>(load);
    };
    std::erase_if(last.job.order.loads, is_it);
    last.job.order.loads.push_back({static_cast<int>(load), admixtures});
  }
  return last;
}

LastLoads in_last_fraction(const Job& job, const OrderPlan& order,
                           const std::vector<Admixture>& admixtures, double fraction) {
  if (order.loads.size() == 1) {
    Job split = job;
    split.order.load_size_m3 = order.ordered_m3 * (1.0 - fraction) * load_ease;
    return in_last_count(split, 2, admixtures, 1);
  }
  const auto loads = static_cast<double>(order.loads.size());
  const auto number = static_cast<std::size_t>(std::max(1L, std::lround(fraction * loads)));
  return in_last_count(job, order.loads.size(), admixtures, number);
}

std::string last_loads_words(const LastLoads& last) {
  return last.number == 1 ? fmt::format("in the last of {} loads", last.of)
                          : fmt::format("in the last {} of {} loads", last.number, last.of);
}

Job in_zones(const Job& job, const std::vector<std::size_t>& zones,
             const std::vector<Admixture>& admixtures) {
  Job changed = job;
  for (const std::size_t i : zones) changed.zones[i].admixtures = admixtures;
  return changed;
}

void add_admixture_choices(const ChoiceContext& context, ChoiceList& list) {
  const CompareRules& rules = context.rules;
  for (const double dose : {rules.retarder_low_ml_100kg, rules.retarder_high_ml_100kg}) {
    const Admixture retarder = retarder_of(dose);
    add_everywhere(context, retarder, list);
    add_last(context, retarder, half, "half", list);
    add_last(context, retarder, third, "third", list);
    add_sunny(context, retarder, list);
  }
  if (has_retarder(context.job)) {
    Job job = context.job;
    change_all_admixtures(job, without_retarder);
    list.add(ChoiceKind::admixture, "no retarder", "leave the retarder out", std::move(job));
  }
  Admixture accelerator;
  accelerator.kind = AdmixtureKind::accelerator_non_chloride;
  accelerator.dose_ml_100kg = rules.accelerator_ml_100kg;
  add_everywhere(context, accelerator, list);
}

}  // namespace slabtide
