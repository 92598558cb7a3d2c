#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "chart_axes.h"
#include "report/markup/svg.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// A value at an instant, in seconds from the start of the weather grid.
struct ChartPoint {
  double at_s = 0.0;
  double value = 0.0;
};

struct ChartLine {
  std::string name;   ///< shown at the end of the line
  std::string style;  ///< CSS class: colour and dash
  std::vector<ChartPoint> points;
  /// Minimum and maximum around the line, at the same instants; may be empty.
  std::vector<std::pair<double, double>> band;
  /// The time span in which the line is drawn thick.
  std::optional<std::pair<double, double>> thick_s;
};

/// A named level, drawn across the chart.
struct ChartLevel {
  double value = 0.0;
  std::string words;
};

/// A named range of values, drawn as a bracket beside the lines.
struct ChartRange {
  double low = 0.0;
  double high = 0.0;
  std::string words;
};

/// A bar along the time axis under the lines.
struct ChartBar {
  std::string name;
  std::string style;
  std::optional<double> from_s;
  std::optional<double> to_s;
  std::optional<double> mark_s;  ///< a stroke across the bar
};

struct LineChart {
  std::string title;  ///< describes the chart to a screen reader
  double from_s = 0.0;
  double to_s = 0.0;
  AxisScale::Kind kind = AxisScale::Kind::straight;
  double low = 0.0;
  double high = 1.0;
  std::vector<ChartLine> lines;
  std::vector<ChartLevel> levels;
  std::vector<ChartRange> ranges;
  std::vector<ChartBar> bars;
};

/// The drawing: hours along the bottom (night shaded), values at the left, each line named at its
/// end.
Element render_chart(const LineChart& chart, const PlannedPour& facts);

}  // namespace slabtide
