#pragma once

#include <string>

#include "report/markup/contours.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// How the flat site plan lies in a drawing: north up, to scale, whole drawing units.
class PlanView {
 public:
  /// All zones, the obstacles near them, and a margin.
  explicit PlanView(const Job& job);

  double width() const { return width_; }
  double height() const { return height_; }  ///< the strip for the scale bar included
  double plan_height() const;
  double units_per_m() const { return units_per_m_; }

  double x(double x_m) const;
  double y(double y_m) const;

  /// A closed ring as path data, each corner relative to the one before.
  std::string ring(const Outline& outline) const;
  std::string line(const ContourLine& line) const;
  /// "0 0 1000 800".
  std::string box() const;

 private:
  Point low_;
  Point high_;
  double units_per_m_ = 1.0;
  double width_ = 0.0;
  double height_ = 0.0;
};

}  // namespace slabtide
