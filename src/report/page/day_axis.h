#pragma once

#include <string>
#include <vector>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The time span of the day's bands, in full local hours.
struct DayAxis {
  UtcTime from;
  UtcTime to;

  /// How far along an instant is, in percent; 0 or 100 if it is beyond the ends.
  double percent(UtcTime time) const;
  /// The same for an attribute: "37.25%".
  std::string fraction(UtcTime time) const;
  bool holds(UtcTime time) const { return time >= from && time <= to; }
};

/// From the first truck or worker to the end of the last band, at most a day.
DayAxis day_axis(const PlannedPour& facts);

/// An instant that gets a line, and its label.
struct HourMark {
  UtcTime at;
  std::string words;  ///< "8:00"; "Fri" at midnight
};

/// Every hour, or every second one if they would be too close.
std::vector<HourMark> hour_marks(const DayAxis& axis, const Job& job);

/// Darkness within the axis: before sunrise and after sunset.
struct Night {
  UtcTime from;
  UtcTime to;
};
std::vector<Night> nights(const DayAxis& axis, const PlannedPour& facts);

}  // namespace slabtide
