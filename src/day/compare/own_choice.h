#pragma once

#include "choice_list.h"

namespace slabtide {

/// Adds a change that the user defined in the job file.
void add_own_choice(const OptionNote& note, ChoiceList& list);

}  // namespace slabtide
