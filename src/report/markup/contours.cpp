#include "contours.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <stdexcept>

namespace slabtide {

namespace {

/// The index of a lattice edge: each node has two, to its east and to its north.
using Edge = std::size_t;
using Segment = std::array<Edge, 2>;

double between(Point a, Point b) { return std::hypot(b.x_m - a.x_m, b.y_m - a.y_m); }

Point on_the_way(Point a, Point b, double fraction) {
  return {a.x_m + (b.x_m - a.x_m) * fraction, a.y_m + (b.y_m - a.y_m) * fraction};
}

/// The four corners of a square, counter-clockwise from the south-west.
struct Square {
  std::size_t column;
  std::size_t row;
  std::array<double, 4> corner;

  static std::optional<Square> at(const Lattice& lattice, std::size_t column, std::size_t row) {
    const std::array<const std::optional<double>*, 4> found{
        &lattice.value(column, row), &lattice.value(column + 1, row),
        &lattice.value(column + 1, row + 1), &lattice.value(column, row + 1)};
    Square square{column, row, {}};
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (!*found[i]) return std::nullopt;
      square.corner[i] = **found[i];
    }
    return square;
  }

  /// South, east, north, west.
  std::array<Edge, 4> edges(const Lattice& lattice) const {
    const auto east_of = [&](std::size_t c, std::size_t r) {
      return 2 * (r * lattice.columns + c);
    };
    return {east_of(column, row), east_of(column + 1, row) + 1, east_of(column, row + 1),
            east_of(column, row) + 1};
  }
};

class Tracer {
 public:
  Tracer(const Lattice& lattice, double level) : lattice_(lattice), level_(level) {
    for (std::size_t row = 0; row + 1 < lattice.rows; ++row) {
      for (std::size_t column = 0; column + 1 < lattice.columns; ++column) {
        if (const auto square = Square::at(lattice, column, row)) cross(*square);
      }
    }
  }

  std::vector<ContourLine> lines() {
    std::vector<ContourLine> all;
    for (const auto& [edge, segments] : segments_at_) {
      if (segments.size() == 1 && !used_[segments[0]]) all.push_back(follow(edge));
    }
    for (const auto& [edge, segments] : segments_at_) {
      if (!used_[segments[0]]) all.push_back(follow(edge));
    }
    return all;
  }

 private:
  bool above(double value) const { return value >= level_; }

  void add(Edge a, Edge b) {
    segments_at_[a].push_back(segments_.size());
    segments_at_[b].push_back(segments_.size());
    segments_.push_back({a, b});
    used_.push_back(false);
  }

  /// Joins the edges that the line crosses in pairs.
  void cross(const Square& square) {
    const auto edges = square.edges(lattice_);
    std::vector<Edge> crossed;
    for (std::size_t i = 0; i < edges.size(); ++i) {
      if (above(square.corner[i]) != above(square.corner[(i + 1) % edges.size()])) {
        crossed.push_back(edges[i]);
      }
    }
    if (crossed.size() == 2) add(crossed[0], crossed[1]);
    if (crossed.size() == edges.size()) cross_saddle(square, crossed);
  }

  /// Opposite corners on the same side as the middle are connected through it; the lines go around
  /// the other two corners.
  void cross_saddle(const Square& square, const std::vector<Edge>& crossed) {
    double sum = 0.0;
    for (const double corner : square.corner) sum += corner;
    const bool middle_above = above(sum / static_cast<double>(square.corner.size()));
    const bool round_south_west = above(square.corner[0]) != middle_above;
    const auto [south, east, north, west] =
        std::array<Edge, 4>{crossed[0], crossed[1], crossed[2], crossed[3]};
    if (round_south_west) {
      add(south, west);
      add(north, east);
    } else {
      add(south, east);
      add(north, west);
    }
  }

  Point point_on(Edge edge) const {
    const std::size_t from = edge / 2;
    const bool north = edge % 2 == 1;
    const std::size_t to = north ? from + lattice_.columns : from + 1;
    const double a = *lattice_.values[from];
    const double b = *lattice_.values[to];
    const auto node = [&](std::size_t index) {
      return lattice_.node(index % lattice_.columns, index / lattice_.columns);
    };
    return on_the_way(node(from), node(to), (level_ - a) / (b - a));
  }

  std::optional<std::size_t> next_segment(Edge edge) const {
    for (const std::size_t segment : segments_at_.at(edge)) {
      if (!used_[segment]) return segment;
    }
    return std::nullopt;
  }

  ContourLine follow(Edge edge) {
    ContourLine line{point_on(edge)};
    while (const auto segment = next_segment(edge)) {
      used_[*segment] = true;
      const Segment& ends = segments_[*segment];
      edge = ends[0] == edge ? ends[1] : ends[0];
      line.push_back(point_on(edge));
    }
    return line;
  }

  const Lattice& lattice_;
  double level_;
  std::vector<Segment> segments_;
  std::vector<bool> used_;
  std::map<Edge, std::vector<std::size_t>> segments_at_;
};

}  // namespace

double line_length_m(const ContourLine& line) {
  double length_m = 0.0;
  for (std::size_t i = 1; i < line.size(); ++i) length_m += between(line[i - 1], line[i]);
  return length_m;
}

Point middle_of(const ContourLine& line) {
  if (line.empty()) throw std::invalid_argument("middle_of: a line without points");
  double left_m = line_length_m(line) / 2.0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double step_m = between(line[i - 1], line[i]);
    if (step_m >= left_m && step_m > 0.0) {
      return on_the_way(line[i - 1], line[i], left_m / step_m);
    }
    left_m -= step_m;
  }
  return line.back();
}

std::vector<ContourLine> contour_lines(const Lattice& lattice, double level) {
  if (lattice.values.size() != lattice.columns * lattice.rows) {
    throw std::invalid_argument("contour_lines: not a value for each node");
  }
  return Tracer(lattice, level).lines();
}

Levels even_levels(double min, double largest, const std::vector<double>& steps, std::size_t max) {
  for (const double step : steps) {
    Levels levels{step, {}};
    const long first = std::lround(std::ceil(min / step));
    const long last = std::lround(std::floor(largest / step));
    if (last < first) return levels;
    if (last - first >= static_cast<long>(max) && step != steps.back()) continue;
    for (long k = first; k <= last; ++k) levels.at.push_back(static_cast<double>(k) * step);
    return levels;
  }
  return {};
}

}  // namespace slabtide
