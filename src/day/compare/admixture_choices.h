#pragma once

#include <optional>
#include <string>

#include "choice_list.h"

namespace slabtide {

/// Retarder at two doses: in every load, in the last half and the last third of them, and in the
/// sunny zones, or load by load; the ordered admixtures left out; an accelerator.
void add_admixture_choices(const ChoiceContext& context, ChoiceList& list);

/// The last of an order's loads.
struct LastLoads {
  std::size_t number = 0;                             ///< of loads that are meant
  std::size_t of = 0;                                 ///< total number of loads
  std::optional<double> load_size_m3 = std::nullopt;  ///< to be ordered, if the order changes
};

/// The last `fraction` of the loads; a single load is ordered as two or three even ones for it.
LastLoads last_fraction(const Job& job, const OrderPlan& order, double fraction);

/// "in the last of 2 loads", "in the last 2 of 5 loads".
std::string last_loads_words(const LastLoads& last);

Admixture retarder_of(double dose_ml_100kg);

}  // namespace slabtide
