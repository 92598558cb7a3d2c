#pragma once

#include <string>

#include "report/markup/contours.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The transformation from the flat site plan to a drawing: north up, to scale, whole drawing
/// units.
class PlanView {
 public:
  /// In drawing units, of which there are 1000 across.
  struct Frame {
    double strip = 90.0;              ///< height below the plan for the scale bar
    double max_plan_height = 1000.0;  ///< a taller site is drawn smaller, in the middle
  };

  /// Shows all zones, the obstacles near them, and a margin.
  explicit PlanView(const Job& job) : PlanView(job, Frame{}) {}
  PlanView(const Job& job, const Frame& frame);

  double width() const { return width_; }
  double height() const { return height_; }  ///< including the strip for the scale bar
  double plan_height() const;
  double units_per_m() const { return units_per_m_; }

  double x(double x_m) const;
  double y(double y_m) const;

  /// A closed ring as path data, each corner relative to the previous one.
  std::string ring(const Outline& outline) const;
  std::string line(const ContourLine& line) const;
  /// The view box, such as "0 0 1000 800".
  std::string box() const;

 private:
  Point low_;
  Point high_;
  double units_per_m_ = 1.0;
  double width_ = 0.0;
  double height_ = 0.0;
  double strip_ = 0.0;
};

}  // namespace slabtide
