#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "map_choices.h"
#include "map_layer.h"
#include "plan_view.h"
#include "report/markup/svg.h"

namespace slabtide {

/// The quarter hours that the slider covers.
struct QuarterHours {
  double start_s = 0.0;  ///< from the weather grid's start
  std::size_t count = 1;

  static constexpr double step_s = 900.0;
  double at_s(std::size_t k) const { return start_s + step_s * static_cast<double>(k); }
};

/// From the start of the pour to the last time that any choice needs, at most a day.
QuarterHours quarter_hours(const std::vector<MapChoice>& choices, const PlannedPour& facts);

/// How far the end of a shadow is from the base of the object, in plan metres per metre of height.
/// Error: std::invalid_argument unless the sun is up.
Point shadow_per_m(double sun_azimuth_deg, double sun_elevation_deg);

/// Fraction of the zone's area that the sun reaches, 0 to 1.
double sunlit_area_fraction(const ZoneRun& zone, const PourRun& run, double at_s);

/// When each cell of the choice opens and closes, for the script: "65 130,,70" has one item per
/// cell, in minutes from the first quarter hour; empty if the work is not done there, "-" if the
/// cell is never ready.
std::string times_for_script(const MapChoice& choice, const QuarterHours& hours);

/// What the map shows before a script moves it, and without one.
struct StillHour {
  const MapChoice& choice;
  std::size_t quarter = 0;
};

/// The map at one hour, with every choice's layers: each cell ready, not yet ready or too stiff;
/// shade as hatching. The script moves it to other hours and choices.
Element hour_picture(const QuarterHours& hours, const StillHour& still,
                     const std::vector<TimeLayer>& layers, const std::vector<ZoneDrawing>& zones,
                     const PlanView& view, const PlannedPour& facts);

/// The clock time of a quarter hour, as the map shows it.
std::string quarter_words(const QuarterHours& hours, std::size_t quarter, const PlannedPour& facts);

/// What the map shows, in the words in which the script says it of other hours: "10:45 AM, finish:
/// 40% ready (pad), 60% not yet, 0% too late. Sun on 80% of the concrete."
std::string hour_words(const QuarterHours& hours, const StillHour& still, const PlannedPour& facts);

}  // namespace slabtide
