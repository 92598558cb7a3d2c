#pragma once

#include <string>

#include "slabtide/day/compare/comparison.h"
#include "slabtide/day/compare/turning_point.h"

namespace slabtide {

/// The comparison in words.
struct Advice {
  std::string order;    ///< what to order; "Not that day." where every choice runs into a stop
  std::string why;      ///< what it makes better, and why not a choice that looks as good
  std::string cost;     ///< what that requires
  std::string turning;  ///< what would change the answer
};

/// The words for a comparison; `turning` is where its answer would change.
Advice advise(const Job& job, const Comparison& comparison, const TurningPoint& turning,
              const CompareRules& rules);

}  // namespace slabtide
