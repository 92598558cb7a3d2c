#pragma once

#include <vector>

#include "slabtide/day/compare/choices.h"
#include "slabtide/day/compare/compared_choice.h"

namespace slabtide {

/// Two changes made together, of those that were computed one at a time: the few pairs that promise
/// most, and only those that promise more than the best alone. A pair promises the stops and
/// cautions that both its parts have, and what each saves of the minutes late.
Choices find_joined_choices(const PlannedPour& ordered, const ChoiceFigures& as_ordered,
                            const std::vector<ComparedChoice>& singles);

}  // namespace slabtide
