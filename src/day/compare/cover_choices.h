#pragma once

#include "choice_list.h"

namespace slabtide {

/// What keeps the slab warm or moist from the night on: blankets where frost or a cut that is due
/// too soon is feared, plastic or a curing compound where nothing cures it and it dries fast.
void add_cover_choices(const ChoiceContext& context, ChoiceList& list);

}  // namespace slabtide
