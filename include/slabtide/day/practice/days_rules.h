#pragma once

namespace slabtide {

/// What `days` asks of a day, from data/practice.toml.
struct DaysRules {
  double call_off_h = 0.0;  ///< before its first load is batched a plant wants to hear of a change
  double reach_h = 0.0;     ///< of forecast that a day needs after its start: the night and the
                            ///< morning of the washing
  int more_finishers = 0;   ///< so many beyond the job's crew can be found for a day
};

}  // namespace slabtide
