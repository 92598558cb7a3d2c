#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/practice/uncertain_inputs.h"

namespace slabtide {

/// A cause of doubt and how much of the doubt it explains.
struct DoubtCause {
  UncertainInput uncertain_input = UncertainInput::set_time;
  double fraction = 0.0;  ///< of the variance of the main openings, 0 to 1
};

/// How sure a plan is as a whole.
struct Sureness {
  std::size_t samples = 0;
  /// Half the time between early and late, averaged over the openings of the zones' main work.
  /// Absent if on one day in ten or more one of them is after the plan's end or does not happen.
  std::optional<double> either_way_min;
  std::vector<DoubtCause> causes;  ///< the largest first
};

/// How sure a plan is, in a word.
enum class SureWord { quite, fairly, roughly, hardly };
/// Quite sure within 20 min either way, fairly within 45, roughly within 90, else hardly (ours).
SureWord sure_word(const Sureness& sureness);

}  // namespace slabtide
