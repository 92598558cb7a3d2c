#pragma once

#include <string>

#include "slabtide/day/compare/comparison.h"
#include "slabtide/day/compare/turning_point.h"

namespace slabtide {

/// The comparison in words.
struct Advice {
  std::string order;    ///< what to order and why, two sentences
  std::string cost;     ///< what that requires
  std::string turning;  ///< what would change the answer
};

/// The words for a comparison; `turning` is where its answer would change.
Advice advise(const Job& job, const Comparison& comparison, const TurningPoint& turning,
              const CompareRules& rules);

}  // namespace slabtide
