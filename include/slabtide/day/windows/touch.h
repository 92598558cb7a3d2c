#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/part_plan.h"

namespace slabtide {

/// How much weight a surface takes.
enum class Touch {
  wait,
  light,      ///< the first tenth has opened, the rest yields under full weight
  full,       ///< full weight
  last_call,  ///< still takes it, but not for long
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

/// The touch of one part for its finish's main operation, at each quarter hour.
struct PartTouch {
  std::string part_id;  ///< as PlaceId::part
  std::string part;     ///< its name; empty for a whole zone
  Operation operation = Operation::stamp;
  std::vector<TouchAt> quarters;
};

/// The typical resistance of the part at an instant: the geometric mean over its area, because
/// resistance grows about tenfold while the surface seems to change evenly. Seconds count from the
/// grid's start.
double typical_resistance_psi(const PartPlan& part, const ZoneRun& zone, const PourRun& run,
                              double at_s);

/// `opens`: whether the part's window has opened.
Touch touch_at(double resistance_psi, bool opens, const ResistanceWindow& window,
               const TouchRules& rules);

/// A part and the operation to be done on it.
struct TouchedPart {
  const PartPlan* plan = nullptr;
  Operation operation = Operation::stamp;
};

/// The same quarter hours for all parts of a zone: from the last one before any part opens to the
/// first one by which all have closed. Empty if none opens.
std::vector<PartTouch> touch_of(const std::vector<TouchedPart>& parts, const ZoneRun& zone,
                                const PourRun& run, const Practice& practice);

}  // namespace slabtide
