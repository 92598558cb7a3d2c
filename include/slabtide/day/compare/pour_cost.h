#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// What a pour's money goes into.
enum class CostPart {
  hands,  ///< of the finishing crew
  concrete,
  short_loads,
  retarder,  ///< or stabilizer
  accelerator,
  chloride,
  ice,
  hot_water,
  chilled_water,
  plastic,
  blankets,
  film,    ///< against evaporation
  redo,    ///< of finishes that are lost
  repair,  ///< of cracks where cuts come too late
};

/// The id used in the JSON, "short_loads", and the words used in lists, "short-load fees".
std::string_view cost_part_id(CostPart part);
std::string_view cost_part_words(CostPart part);

/// Money, in the job's currency.
struct CostItem {
  CostPart part = CostPart::hands;
  double money = 0.0;
};

/// What a pour costs, as far as the job tells prices.
struct PourCost {
  std::vector<CostItem> items;     ///< of the likely day, in the order of CostPart
  std::vector<CostPart> left_out;  ///< what the pour needs or risks without a price for it
  /// Mean over the sampled days of what lost finishes cost; empty without sampled days or its
  /// price.
  std::optional<double> expected_redo;

  /// On the likely day.
  double likely() const;
  /// Mean over the sampled days: all as on the likely day, but finishes lost as often as they are.
  std::optional<double> expected() const;
};

/// What the pour as planned costs; empty if its job tells no prices. It counts what a choice can
/// change and the concrete: the finishing crew from arrival to leaving, with its waits; what is
/// ordered and laid on; and redoing and mending. Forms, base, steel, saws, sealer and those who
/// place are in no part.
///
/// `zone_lost_fractions` as of CrewPlan, empty without sampled days. `ordered` is the mix as
/// ordered, from whose temperature that of the job is reached: by ice where that has a price, else
/// by chilled water, or by hot water.
std::optional<PourCost> cost_of_pour(const Job& job, const OrderPlan& order, const DayPlan& plan,
                                     const std::vector<double>& zone_lost_fractions,
                                     const Mix& ordered);
/// The same for a pour that nothing is changed of.
std::optional<PourCost> cost_of_pour(const PlannedPour& pour);

}  // namespace slabtide
