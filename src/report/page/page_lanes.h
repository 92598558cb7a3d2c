#pragma once

#include <optional>
#include <string>
#include <vector>

#include "day_axis.h"
#include "report/markup/svg.h"

// What is drawn along the time axis. Lengths along it are shares of the width, heights pixels:
// the drawing fills whatever it is put in, and its words keep their size.

namespace slabtide {

/// A time as it stands in a drawing, with the JSON pointer to it.
struct LaneTime {
  UtcTime at;
  std::string json;
};

/// Something that lasts, with its name before it and its hours behind it. Its height grows from
/// `from` to `all_over` and falls from `until` to `gone`: the share of the area that takes it.
struct Band {
  std::string name;
  std::string style;  ///< class of its fill
  bool main = false;  ///< the one the finish is named for
  LaneTime from;
  std::optional<UtcTime> all_over;
  std::optional<LaneTime> until;  ///< absent where it goes on beyond what was computed
  std::optional<UtcTime> gone;
};

inline constexpr double lane_height = 19.0;

/// The hours and nights that all drawings share, defined once a page.
Element lane_definitions(const DayAxis& axis, const PlannedPour& facts);

/// The clock along the axis.
Element clock_drawing();

/// A drawing across the axis, so many pixels high, hours and nights in it; `label` says in a
/// sentence what it shows; without one it is only for the eye.
Element lane_drawing(double height, const std::string& label);

/// A band in the lane that begins `top` pixels down.
Element band(const Band& shown, const DayAxis& axis, double top, const Job& job);

/// A box without words, such as a task; `words` show in it where they have room.
Element block(const std::string& style, UtcTime from, UtcTime to, const std::string& words,
              const DayAxis& axis, double top);

/// A share of 0 to 1 through the day as a strip: full is sun, empty shade.
struct SharePoint {
  UtcTime at;
  double fraction = 0.0;
};
Element sun_strip(const std::vector<SharePoint>& points, const DayAxis& axis, double top,
                  double height);

}  // namespace slabtide
