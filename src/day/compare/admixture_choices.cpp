#include "admixture_choices.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "admixture_change.h"
#include "job/model/wording.h"

namespace slabtide {

namespace {

constexpr double half = 0.5;
constexpr double third = 1.0 / 3.0;
constexpr std::size_t min_stepped_loads = 3;

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
  const LastLoads last = last_fraction(context.job, context.run.order, fraction);
  const UnitSystem units = context.job.units;
  OfferedChoice offered{
      ChoiceKind::admixture,
      fmt::format("retarder {}, last {}", dose_label(retarder, units), part),
      fmt::format("retarder {} {}", dose_label(retarder, units), part),
      fmt::format("add retarder at {} {}", dose_words(retarder, units), last_loads_words(last)),
      {}};
  if (context.run.order.loads.size() == 1) {
    offered.words = fmt::format("order the concrete in {} loads, with retarder at {} in the last",
                                last.of == 2 ? "two" : "three", dose_words(retarder, units));
  }
  if (last.load_size_m3 && *last.load_size_m3 < context.rules.min_load_m3) {
    list.leave_out(std::move(offered.label),
                   fmt::format("a plant sends no less than {}",
                               volume_words(context.rules.min_load_m3, units)));
    return;
  }
  offered.change.load_size_m3 = last.load_size_m3;
  offered.change.last_loads = static_cast<int>(last.number);
  offered.change.admixtures = std::vector{retarder};
  list.offer(std::move(offered));
}

void add_sunny(const ChoiceContext& context, const Admixture& retarder, ChoiceList& list) {
  const UnitSystem units = context.job.units;
  const std::string label = fmt::format("retarder {}, in the sun", dose_label(retarder, units));
  const auto sunny = sunny_zones(context);
  if (sunny.empty()) {
    list.leave_out(label, "no zone is in the sun for long");
  } else if (sunny.size() == context.job.zones.size()) {
    list.leave_out(label, "every zone is in the sun: the same as in every load");
  } else if (!context.job.order.loads.empty()) {
    list.leave_out(label, "loads have admixtures of their own, which override a zone's");
  } else {
    OfferedChoice offered{ChoiceKind::admixture,
                          label,
                          fmt::format("retarder {} in sun", dose_label(retarder, units)),
                          fmt::format("add retarder at {} in the sunny zones only ({})",
                                      dose_words(retarder, units), zone_names(context.job, sunny)),
                          {}};
    offered.change.admixtures = std::vector{retarder};
    for (const std::size_t i : sunny) {
      offered.change.admixture_zones.push_back(context.job.zones[i].name);
    }
    list.offer(std::move(offered));
  }
}

void add_everywhere(const ChoiceContext& context, const Admixture& admixture, ChoiceList& list) {
  const UnitSystem units = context.job.units;
  const std::string name(admixture_words(admixture.kind));
  OfferedChoice offered{
      ChoiceKind::admixture,
      fmt::format("{} {}{}", name, dose_label(admixture, units),
                  admixture.kind == AdmixtureKind::retarder ? ", all loads" : ""),
      fmt::format("{} {}", name, dose_label(admixture, units)),
      fmt::format("add {} at {} to every load", name, dose_words(admixture, units)),
      {}};
  offered.change.admixtures = std::vector{admixture};
  list.offer(std::move(offered));
}

/// A little more in each load, from none in the first: for an order of three loads and more.
void add_load_by_load(const ChoiceContext& context, ChoiceList& list) {
  const std::size_t loads = context.run.order.loads.size();
  if (loads < min_stepped_loads || !context.runs_late()) return;
  const UnitSystem units = context.job.units;
  const double most = context.rules.retarder_high_ml_100kg;
  OfferedChoice offered{
      ChoiceKind::admixture,
      fmt::format("retarder 0 to {}, by load", dose_label(retarder_of(most), units)),
      "retarder by load",
      fmt::format("add retarder load by load, from none in the first to {} in the last of {}",
                  dose_words(retarder_of(most), units), loads),
      {}};
  for (std::size_t i = 1; i < loads; ++i) {
    const double fraction = static_cast<double>(i) / static_cast<double>(loads - 1);
    offered.change.loads.push_back({static_cast<int>(i) + 1, {retarder_of(most * fraction)}});
  }
  list.offer(std::move(offered));
}

}  // namespace

Admixture retarder_of(double dose_ml_100kg) {
  Admixture retarder;
  retarder.kind = AdmixtureKind::retarder;
  retarder.dose_ml_100kg = dose_ml_100kg;
  return retarder;
}

LastLoads last_fraction(const Job& job, const OrderPlan& order, double fraction) {
  if (order.loads.size() == 1) {
    const auto loads = static_cast<std::size_t>(std::lround(1.0 / fraction));
    return {1, loads, sold_m3(order.ordered_m3 / static_cast<double>(loads), job.units)};
  }
  const auto loads = static_cast<double>(order.loads.size());
  const auto number = static_cast<std::size_t>(std::max(1L, std::lround(fraction * loads)));
  return {number, order.loads.size(), std::nullopt};
}

std::string last_loads_words(const LastLoads& last) {
  return last.number == 1 ? fmt::format("in the last of {} loads", last.of)
                          : fmt::format("in the last {} of {} loads", last.number, last.of);
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
  add_load_by_load(context, list);
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
