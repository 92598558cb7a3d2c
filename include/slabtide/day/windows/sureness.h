#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/practice/uncertain_inputs.h"

namespace slabtide {

/// What a share of the doubt comes from.
struct DoubtCause {
  UncertainInput unknown = UncertainInput::set_time;
  double fraction = 0.0;  ///< of the variance of the main openings, 0 to 1
};

/// How sure a plan is as a whole.
struct Sureness {
  std::size_t samples = 0;
  /// Half of what lies between early and late, the mean over the openings of the zones' main work.
  /// Absent where one of them comes after the plan's end, if at all, on one day in ten or more.
  std::optional<double> either_way_min;
  std::vector<DoubtCause> causes;  ///< the largest first
};

/// How sure, in a word.
enum class SureWord { quite, fairly, roughly, hardly };
/// Within 20 min either way one is quite sure, within 45 fairly, within 90 roughly, else hardly
/// (ours).
SureWord sure_word(const Sureness& sureness);

}  // namespace slabtide
