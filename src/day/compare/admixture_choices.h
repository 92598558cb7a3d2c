#pragma once

#include "choice_list.h"

namespace slabtide {

/// Retarder at two doses in every load, in the last half and third of them and in the sunny
/// zones; what is ordered left out; an accelerator.
void add_admixture_choices(const ChoiceContext& context, ChoiceList& list);

/// A job with admixtures of their own in its last loads.
struct LastLoads {
  Job job;
  std::size_t number = 0;  ///< of loads that get them
  std::size_t of = 0;      ///< loads in all
};

/// In the last `fraction` of the loads; a single load is ordered as two for it.
LastLoads in_last_fraction(const Job& job, const OrderPlan& order,
                           const std::vector<Admixture>& admixtures, double fraction);
/// In this many of the `of` loads there are.
LastLoads in_last_count(const Job& job, std::size_t of, const std::vector<Admixture>& admixtures,
                        std::size_t number);

/// "in the last load", "in the last 2 of 5 loads", "in the second of two loads, a third of it".
std::string last_loads_words(const LastLoads& last);

/// In these zones only, by index.
Job in_zones(const Job& job, const std::vector<std::size_t>& zones,
             const std::vector<Admixture>& admixtures);

Admixture retarder_of(double dose_ml_100kg);

}  // namespace slabtide
