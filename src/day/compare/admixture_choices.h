#pragma once

#include "choice_list.h"

namespace slabtide {

/// Retarder at two doses: in every load, in the last half and the last third of them, and in the
/// sunny zones; the ordered admixtures left out; an accelerator.
void add_admixture_choices(const ChoiceContext& context, ChoiceList& list);

/// A job whose last loads have their own admixtures.
struct LastLoads {
  Job job;
  std::size_t number = 0;  ///< of loads that get them
  std::size_t of = 0;      ///< total number of loads
};

/// The admixtures in the last `fraction` of the loads; for this a single load is ordered as two.
LastLoads in_last_fraction(const Job& job, const OrderPlan& order,
                           const std::vector<Admixture>& admixtures, double fraction);
/// The admixtures in the last `number` of the `of` loads.
LastLoads in_last_count(const Job& job, std::size_t of, const std::vector<Admixture>& admixtures,
                        std::size_t number);

/// "in the last load", "in the last 2 of 5 loads", "in the second of two loads, a third of it".
std::string last_loads_words(const LastLoads& last);

/// The admixtures only in these zones, given by index.
Job in_zones(const Job& job, const std::vector<std::size_t>& zones,
             const std::vector<Admixture>& admixtures);

Admixture retarder_of(double dose_ml_100kg);

}  // namespace slabtide
