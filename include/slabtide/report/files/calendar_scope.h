#pragma once

#include <string>

namespace slabtide {

/// What a calendar of the day holds.
struct CalendarScope {
  /// Every window, saw cut and arrival; else the loads, each zone's finish and each saw run.
  bool detail = false;
  /// One finisher's day only, by the name in the plan: "finisher 1"; empty for everybody's.
  std::string finisher = {};
};

}  // namespace slabtide
