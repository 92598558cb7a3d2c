#include "slabtide/day/compare/pour_cost.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>

#include "admixture_change.h"
#include "slab/mix/mix_temperature.h"
#include "slabtide/day/crew/sawing.h"

namespace slabtide {

namespace {

struct PartName {
  std::string_view id;
  std::string_view words;
};

constexpr std::array<PartName, 14> part_names{{{"hands", "finishers"},
                                               {"concrete", "concrete"},
                                               {"short_loads", "short-load fees"},
                                               {"retarder", "retarder"},
                                               {"accelerator", "accelerator"},
                                               {"chloride", "calcium chloride"},
                                               {"ice", "ice"},
                                               {"hot_water", "hot water"},
                                               {"chilled_water", "chilled water"},
                                               {"plastic", "plastic"},
                                               {"blankets", "blankets"},
                                               {"film", "evaporation film"},
                                               {"redo", "finishes to redo"},
                                               {"repair", "cracks to repair"}}};

/// Less than this of anything is rounding.
constexpr double none = 1e-9;

CostPart part_of(AdmixtureKind kind) {
  switch (kind) {
    case AdmixtureKind::accelerator_chloride:
      return CostPart::chloride;
    case AdmixtureKind::accelerator_non_chloride:
      return CostPart::accelerator;
    default:
      return CostPart::retarder;
  }
}

/// Adds up the likely day, part by part.
class Money {
 public:
  explicit Money(const Prices& prices) : prices_(prices) {}

  void hands(const CrewPlan& crew) { add(CostPart::hands, crew.crew_hours(), prices_.hand_per_h); }

  void concrete(const OrderPlan& order) {
    add(CostPart::concrete, order.sold_m3, prices_.concrete_per_m3);
    const auto shorts = std::count_if(order.loads.begin(), order.loads.end(),
                                      [](const Load& load) { return load.is_short; });
    add(CostPart::short_loads, static_cast<double>(shorts), prices_.short_load);
  }

  void admixtures(const Job& job, const OrderPlan& order) {
    constexpr double l_per_ml = 0.001;
    for (const AdmixtureUse& use : admixture_use(job, order)) {
      const CostPart part = part_of(use.kind);
      if (use.dose_is_unknown) leave_out(part);
      if (part == CostPart::chloride) {
        add(part, use.amount, prices_.chloride_per_kg);
      } else {
        add(part, use.amount * l_per_ml,
            part == CostPart::retarder ? prices_.retarder_per_l : prices_.accelerator_per_l);
      }
    }
  }

  void temperature(const Mix& mix, const Mix& ordered, double concrete_m3) {
    const double ordered_c = discharge_temperature_c(ordered);
    const double by_k = discharge_temperature_c(mix) - ordered_c;
    const auto* parts = std::get_if<IngredientTemperatures>(&ordered.temperature);
    double ice_kg_m3 = parts == nullptr ? 0.0 : parts->ice_kg_m3;
    if (by_k > none) add(CostPart::hot_water, concrete_m3, prices_.hot_water_per_m3);
    if (by_k < -none && !prices_.ice_per_kg && prices_.chilled_water_per_m3) {
      add(CostPart::chilled_water, concrete_m3, prices_.chilled_water_per_m3);
    } else {
      ice_kg_m3 += water_for(ordered, ordered_c, by_k).ice_kg_m3;
    }
    add(CostPart::ice, ice_kg_m3 * concrete_m3, prices_.ice_per_kg);
  }

  void covers(const Job& job, const DayPlan& plan) {
    for (const Supply& supply : plan.supplies) {
      if (supply.kind == SupplyKind::plastic) {
        add(CostPart::plastic, supply.area_m2, prices_.plastic_per_m2);
      } else if (supply.kind == SupplyKind::blankets) {
        add(CostPart::blankets, supply.area_m2, prices_.blankets_per_m2);
      }
    }
    if (!job.pour.evaporation_film) return;
    const double sprayed_m2 =
        std::accumulate(plan.zones.begin(), plan.zones.end(), 0.0,
                        [](double sum, const ZonePlan& zone) { return sum + zone.area_m2; });
    add(CostPart::film, sprayed_m2, prices_.film_per_m2);
  }

  /// Of the zones whose finish the likely day loses, and over the sampled days.
  void redo(const DayPlan& plan, const std::vector<double>& zone_lost_fractions) {
    double lost_m2 = 0.0;
    for (const std::size_t zone : lost_finishes(plan.crew.tasks, plan.crew.schedule)) {
      lost_m2 += plan.zones[zone].area_m2;
    }
    add(CostPart::redo, lost_m2, prices_.redo_per_m2);
    if (zone_lost_fractions.empty()) return;
    double expected_m2 = 0.0;
    for (std::size_t i = 0; i < plan.zones.size(); ++i) {
      expected_m2 += zone_lost_fractions.at(i) * plan.zones[i].area_m2;
    }
    if (prices_.redo_per_m2) {
      cost_.expected_redo = expected_m2 * *prices_.redo_per_m2;
    } else if (expected_m2 > none) {
      leave_out(CostPart::redo);
    }
  }

  /// Where the saw that is to be used is not through a cut in time, as the crew comes to it.
  void repair(const CutPlan& cuts, const CrewPlan& crew) {
    double late_m = 0.0;
    for (const SawKind kind : kinds_of_saw) {
      const SawShift shift = worked_shift(kind, cuts, crew);
      const auto is_its = [&](std::size_t cut) {
        return saw_of(cuts.choices[cuts.cuts[cut].zone].way) == kind;
      };
      for (const SawnCut& sawn : shift.cuts) {
        if (sawn.late && is_its(sawn.cut)) late_m += cuts.cuts[sawn.cut].cut.length_m;
      }
      for (const std::size_t cut : shift.never_open) {
        if (is_its(cut)) late_m += cuts.cuts[cut].cut.length_m;
      }
    }
    add(CostPart::repair, late_m, prices_.repair_per_m);
  }

  PourCost take() {
    std::sort(cost_.items.begin(), cost_.items.end(),
              [](const CostItem& a, const CostItem& b) { return a.part < b.part; });
    std::sort(cost_.left_out.begin(), cost_.left_out.end());
    return std::move(cost_);
  }

 private:
  void add(CostPart part, double amount, const std::optional<double>& price) {
    if (!(amount > none)) return;
    if (!price) {
      leave_out(part);
      return;
    }
    const auto same = std::find_if(cost_.items.begin(), cost_.items.end(),
                                   [part](const CostItem& item) { return item.part == part; });
    if (same != cost_.items.end()) {
      same->money += amount * *price;
    } else {
      cost_.items.push_back({part, amount * *price});
    }
  }

  void leave_out(CostPart part) {
    const auto& told = cost_.left_out;
    if (std::find(told.begin(), told.end(), part) == told.end()) cost_.left_out.push_back(part);
  }

  const Prices& prices_;
  PourCost cost_;
};

}  // namespace

std::string_view cost_part_id(CostPart part) {
  return part_names.at(static_cast<std::size_t>(part)).id;
}

std::string_view cost_part_words(CostPart part) {
  return part_names.at(static_cast<std::size_t>(part)).words;
}

double PourCost::likely() const {
  return std::accumulate(items.begin(), items.end(), 0.0,
                         [](double sum, const CostItem& item) { return sum + item.money; });
}

std::optional<double> PourCost::expected() const {
  if (!expected_redo) return std::nullopt;
  double money = *expected_redo;
  for (const CostItem& item : items) {
    if (item.part != CostPart::redo) money += item.money;
  }
  return money;
}

std::optional<PourCost> cost_of_pour(const Job& job, const OrderPlan& order, const DayPlan& plan,
                                     const std::vector<double>& zone_lost_fractions,
                                     const Mix& ordered) {
  if (!job.prices) return std::nullopt;
  Money money(*job.prices);
  money.hands(plan.crew);
  money.concrete(order);
  money.admixtures(job, order);
  money.temperature(job.mix, ordered, order.ordered_m3);
  money.covers(job, plan);
  money.redo(plan, zone_lost_fractions);
  money.repair(plan.cuts, plan.crew);
  return money.take();
}

std::optional<PourCost> cost_of_pour(const PlannedPour& pour) {
  return cost_of_pour(pour.job, pour.run.order, pour.plan, pour.plan.crew.zone_lost_fractions,
                      pour.job.mix);
}

}  // namespace slabtide
