#pragma once

#include <memory>
#include <string>
#include <vector>

#include "cell_field.h"
#include "map_choices.h"
#include "map_ground.h"
#include "plan_view.h"
#include "report/markup/svg.h"

namespace slabtide {

/// The drawing of one zone's cells that is the same for every choice.
struct ZoneDrawing {
  std::vector<std::string> shapes;     ///< path data, one per cell
  std::vector<std::size_t> field;      ///< indices of the cells in the field
  std::unique_ptr<CellField> heights;  ///< interpolates over the field's cells
};

std::vector<ZoneDrawing> render_zones(const PlannedPour& facts, const PlanView& view);

/// The evenly spaced times of one choice's map.
class TimeScale {
 public:
  TimeScale(const MapChoice& choice, const PlannedPour& facts);

  bool empty() const { return !(last_s_ >= first_s_); }
  double first_s() const { return first_s_; }
  double last_s() const { return last_s_; }
  const std::vector<double>& levels_s() const { return levels_s_; }
  double level_step_min() const { return step_min_; }

 private:
  double first_s_ = 0.0;
  double last_s_ = -1.0;
  double step_min_ = 0.0;
  std::vector<double> levels_s_;
};

/// What a choice draws on the map of the hour, whatever the hour.
struct TimeLayer {
  Element below;  ///< the zones' names: the direction of work, lines of equal time
  Element above;  ///< the clock times at which it is ready there
};

/// `shown`: before a script chooses another, and without one.
TimeLayer time_layer(const MapChoice& choice, bool shown, const std::vector<ZoneDrawing>& zones,
                     const MapGround& ground, const PlanView& view, const PlannedPour& facts);

}  // namespace slabtide
