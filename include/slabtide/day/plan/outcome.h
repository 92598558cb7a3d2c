#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "slabtide/day/plan/caution.h"

namespace slabtide {

/// What a plan puts at stake: how many different things (`Caution::code`) threaten each kind of
/// loss. Indexed by Loss, the worst first.
struct Outcome {
  std::array<int, loss_count> stops{};     ///< that say do not pour like this
  std::array<int, loss_count> cautions{};  ///< that ask for care
};

/// What the cautions put at stake; notes do not count.
Outcome outcome_of(const std::vector<Caution>& cautions);

/// True if `a` is to be preferred: fewer stops for the worst loss in which they differ, then fewer
/// cautions likewise. Ours.
bool better(const Outcome& a, const Outcome& b);

}  // namespace slabtide
