#pragma once

#include <string>
#include <vector>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The stretch of time that the bands are drawn across, in whole local hours.
struct DayAxis {
  UtcTime from;
  UtcTime to;

  /// How far along an instant lies, percent; 0 or 100 for one beyond the ends.
  double percent(UtcTime time) const;
  /// The same for an attribute: "37.25%".
  std::string fraction(UtcTime time) const;
  bool holds(UtcTime time) const { return time >= from && time <= to; }
};

/// From the first truck or hand to the last band's end, a day at most.
DayAxis day_axis(const PlannedPour& facts);

/// An instant worth a line, and its words.
struct HourMark {
  UtcTime at;
  std::string words;  ///< "8:00"; "Fri" at midnight
};

/// Every hour, or every second one where they would crowd.
std::vector<HourMark> hour_marks(const DayAxis& axis, const Job& job);

/// The darkness within the axis: before sunrise, after sunset.
struct Night {
  UtcTime from;
  UtcTime to;
};
std::vector<Night> nights(const DayAxis& axis, const PlannedPour& facts);

}  // namespace slabtide
