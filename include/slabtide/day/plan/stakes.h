#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/plan/caution.h"

namespace slabtide {

/// What a plan's cautions put at stake, for weighing one plan against another. By what is lost, the
/// worst first: a Loss is the index.
struct Stakes {
  std::array<int, loss_count> stops{};  ///< that say do not pour like this, at each of its places
  std::array<int, loss_count> cautions{};  ///< different things (`Caution::code`) that ask for care
  /// What the cautions short of a stop come to. Each weighs by what is lost, times the share of the
  /// zones that it is of; in the unit of `ChoiceCost::disturbance`, one more truck being 1.
  double caution_cost = 0.0;
};

/// What one caution of this loss, of the whole job, weighs against trouble that would avoid it.
/// Ours: the slab is worth another hand and more, a finish or a crack a windbreak or a film, money
/// and comfort a truck, or two hours of the clock.
double caution_cost(Loss loss);

/// The stakes of the cautions of a job with so many zones; notes put nothing at stake.
/// Error: std::invalid_argument without a zone.
Stakes stakes_of(const std::vector<Caution>& cautions, std::size_t zones);

/// True if `a` is to be preferred whatever it costs: fewer stops for the worst loss in which they
/// differ, then fewer cautions likewise. Ours.
bool better(const Stakes& a, const Stakes& b);

/// What the worst of these cautions warns of losing: of the highest level, the worst loss. Empty
/// without a caution above a note.
std::optional<Loss> worst_loss(const std::vector<Caution>& cautions);

}  // namespace slabtide
