#pragma once

#include "choice_list.h"

namespace slabtide {

/// A change the user named in the job file.
void add_own_choice(const ChoiceContext& context, const OptionNote& note, ChoiceList& list);

}  // namespace slabtide
