#pragma once

#include "choice_list.h"

namespace slabtide {

/// Cooler concrete by chilled water or ice where heat is feared, warmer concrete by hot water where
/// cold is.
void add_concrete_choices(const ChoiceContext& context, ChoiceList& list);

}  // namespace slabtide
