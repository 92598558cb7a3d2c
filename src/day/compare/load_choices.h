#pragma once

#include "choice_list.h"

namespace slabtide {

/// Where time runs short: the same concrete in more and smaller trucks, to sizes that a plant
/// sells, with a wait between them that an edge may stand open; or a zone with a truck of its own,
/// later.
void add_load_choices(const ChoiceContext& context, ChoiceList& list);

}  // namespace slabtide
