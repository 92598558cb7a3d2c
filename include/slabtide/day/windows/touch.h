#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/part_plan.h"

namespace slabtide {

/// How heavily a surface can be worked.
enum class Touch {
  wait,
  light,      ///< its first tenth has opened, the rest gives under full weight
  full,       ///< full weight
  last_call,  ///< still takes it, not for long
  gone
};

/// The id used in the JSON: "last_call".
std::string_view touch_id(Touch touch);

/// The touch at one quarter hour.
struct TouchAt {
  UtcTime at;
  double resistance_psi = 0.0;  ///< typical of the part, at the working depth
  Touch touch = Touch::wait;
};

/// The touch of one part for the operation its finish is named for, at each quarter hour.
struct PartTouch {
  std::string part;  ///< empty for a whole zone
  Operation operation = Operation::stamp;
  std::vector<TouchAt> quarters;
};

/// The resistance at an instant, typical of the part: the geometric mean over its area, as
/// resistance grows about tenfold while the surface seems to change evenly. Seconds count
/// from the grid's start.
double typical_resistance_psi(const PartPlan& part, const ZoneRun& zone, const PourRun& run,
                              double at_s);

/// `opens`: whether the part's window has opened.
Touch touch_at(double resistance_psi, bool opens, const ResistanceWindow& window,
               const TouchRules& rules);

/// A part and the operation it waits for.
struct TouchedPart {
  const PartPlan* plan = nullptr;
  Operation operation = Operation::stamp;
};

/// The same quarter hours for all the parts of a zone: from the one before the first opens to
/// the one by which the last is gone. Empty where none opens.
std::vector<PartTouch> touch_of(const std::vector<TouchedPart>& parts, const ZoneRun& zone,
                                const PourRun& run, const Practice& practice);

}  // namespace slabtide
