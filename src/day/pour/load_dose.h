#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/pour/order.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The admixtures of the concrete that a load brings to a zone: the load's own, else the zone's,
/// else the mix's.
const std::vector<Admixture>& admixtures_of(const Job& job, const Load& load, const Zone& zone);

/// Whether the zones of a load ask for different admixtures, which no plant can do: a truck is
/// dosed as a whole (common practice, no source).
bool is_dosed_in_part(const Job& job, const Load& load);

/// What to do about such a load: "load 2 is for the field and the border, which ask for different
/// admixtures: ...".
std::string dosed_in_part_words(const Job& job, const Load& load);

/// The first load of an order that is dosed in part; null if there is none.
const Load* first_dosed_in_part(const Job& job, const OrderPlan& order);

}  // namespace slabtide
