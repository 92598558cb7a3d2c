#pragma once

#include <optional>
#include <string>
#include <vector>

#include "day_axis.h"
#include "report/markup/page_views.h"
#include "report/markup/svg.h"

// Drawings along the time axis. Lengths along it are percentages of the width and heights are
// pixels: the drawing fills its container, and its words keep their size.

namespace slabtide {

/// Something that takes time, with its name in front and its hours behind. Its height grows from
/// `from` to `all_over` and falls from `until` to `gone`: the fraction of the area on which the
/// work is possible.
struct Band {
  std::string name;
  std::string style;  ///< CSS class of its fill
  bool main = false;  ///< the operation the finish is named for
  PointedTime from;
  std::optional<UtcTime> all_over;
  std::optional<PointedTime> until;  ///< absent if it continues past what was computed
  std::optional<UtcTime> gone;
};

inline constexpr double lane_height = 19.0;

/// The hours and nights that all drawings share, defined once per page.
Element lane_definitions(const DayAxis& axis, const PlannedPour& facts);

/// The clock along the axis.
Element clock_drawing();

/// A drawing across the axis, `height` pixels high, with the hours and nights. `label` describes it
/// in a sentence for screen readers; without one it is hidden from them.
Element lane_drawing(double height, const std::string& label);

/// A band in the lane that starts `top` pixels down.
Element band(const Band& shown, const DayAxis& axis, double top, const Job& job);

/// A box, such as a task; `words` are shown in it if they fit.
Element block(const std::string& style, UtcTime from, UtcTime to, const std::string& words,
              const DayAxis& axis, double top);

/// A fraction of 0 to 1 through the day, drawn as a strip: full is sun, empty is shade.
struct SharePoint {
  UtcTime at;
  double fraction = 0.0;
};
Element sun_strip(const std::vector<SharePoint>& points, const DayAxis& axis, double top,
                  double height);

}  // namespace slabtide
