#include "faces.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <numeric>
#include <optional>
#include <set>
#include <unordered_map>
#include <utility>

#include "job/geometry/zone_geometry.h"
#include "plane.h"

namespace slabtide::faces {

namespace {

using plane::cross;
using plane::from_to;
using plane::same_place_m;
using plane::Vector;

using Node = std::size_t;
/// Two nodes, the lower first; or a step from the first node to the second.
using Pair = std::pair<Node, Node>;

Pair edge_of(Node a, Node b) { return {std::min(a, b), std::max(a, b)}; }

/// The crossing of two segments that are not parallel.
std::optional<Point> crossing(const Joint& a, const Joint& b) {
  const Vector along_a = from_to(a.from, a.to);
  const Vector along_b = from_to(b.from, b.to);
  constexpr double parallel = 1e-9;
  const double sine = cross(along_a, along_b);
  if (std::abs(sine) < parallel * plane::length(along_a) * plane::length(along_b)) {
    return std::nullopt;
  }
  const Vector between = from_to(a.from, b.from);
  const double on_a = cross(between, along_b) / sine;
  const double on_b = cross(between, along_a) / sine;
  if (on_a < 0.0 || on_a > 1.0 || on_b < 0.0 || on_b > 1.0) return std::nullopt;
  return plane::moved(a.from, along_a, on_a);
}

double signed_area_m2(const Outline& ring) {
  double sum = 0.0;
  for (std::size_t i = 1; i + 1 < ring.size(); ++i) {
    sum += cross(from_to(ring[0], ring[i]), from_to(ring[0], ring[i + 1]));
  }
  return 0.5 * sum;
}

/// The bounding box of a segment, enlarged by the tolerance for equal places.
struct Box {
  Point low;
  Point high;
};

Box box_around(const Joint& segment) {
  const auto [x_low, x_high] = std::minmax(segment.from.x_m, segment.to.x_m);
  const auto [y_low, y_high] = std::minmax(segment.from.y_m, segment.to.y_m);
  constexpr double room_m = 2.0 * same_place_m;
  return {{x_low - room_m, y_low - room_m}, {x_high + room_m, y_high + room_m}};
}

bool meet(const Box& a, const Box& b) {
  return a.low.x_m <= b.high.x_m && b.low.x_m <= a.high.x_m && a.low.y_m <= b.high.y_m &&
         b.low.y_m <= a.high.y_m;
}

/// For each segment the others whose boxes meet its own, in order, found by a sweep along the
/// longer direction.
std::vector<std::vector<std::size_t>> neighbours_of(const std::vector<Joint>& segments) {
  std::vector<Box> boxes;
  boxes.reserve(segments.size());
  for (const Joint& segment : segments) boxes.push_back(box_around(segment));
  double x_sum_m = 0.0;
  double y_sum_m = 0.0;
  for (const Box& box : boxes) {
    x_sum_m += box.high.x_m - box.low.x_m;
    y_sum_m += box.high.y_m - box.low.y_m;
  }
  double Point::*const along = x_sum_m <= y_sum_m ? &Point::x_m : &Point::y_m;
  std::vector<std::size_t> order(boxes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return boxes[a].low.*along < boxes[b].low.*along;
  });
  std::vector<std::vector<std::size_t>> near(boxes.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    const Box& box = boxes[order[i]];
    for (std::size_t k = i + 1; k < order.size(); ++k) {
      const Box& other = boxes[order[k]];
      if (other.low.*along > box.high.*along) break;
      if (!meet(box, other)) continue;
      near[order[i]].push_back(order[k]);
      near[order[k]].push_back(order[i]);
    }
  }
  for (auto& list : near) std::sort(list.begin(), list.end());
  return near;
}

/// Points, merged if closer than `same_place_m`; found by the grid squares they are in.
class Nodes {
 public:
  const Point& operator[](Node node) const { return points_[node]; }
  std::size_t size() const { return points_.size(); }

  /// The first node at the same place, else a new one.
  Node at(Point point) {
    const Square here{square_of(point.x_m), square_of(point.y_m)};
    std::optional<Node> first;
    for (const Square& square : around(here)) {
      if (!reaches(point, here, square)) continue;
      const auto found = squares_.find(key(square));
      if (found == squares_.end()) continue;
      for (const Node node : found->second) {
        if (plane::distance(points_[node], point) >= same_place_m) continue;
        first = std::min(node, first.value_or(node));
      }
    }
    if (first) return *first;
    points_.push_back(point);
    squares_[key(here)].push_back(points_.size() - 1);
    return points_.size() - 1;
  }

 private:
  using Square = std::pair<std::int64_t, std::int64_t>;

  static constexpr double square_m = 0.01;

  static std::int64_t square_of(double m) {
    return static_cast<std::int64_t>(std::floor(m / square_m));
  }

  static std::uint64_t key(Square square) {
    constexpr unsigned half = 32;
    constexpr std::uint64_t low = 0xffffffffU;
    return (static_cast<std::uint64_t>(square.first) << half) ^
           (static_cast<std::uint64_t>(square.second) & low);
  }

  static std::array<Square, 9> around(Square here) {
    std::array<Square, 9> squares;
    std::size_t i = 0;
    for (const std::int64_t x : {-1, 0, 1}) {
      for (const std::int64_t y : {-1, 0, 1}) squares[i++] = {here.first + x, here.second + y};
    }
    return squares;
  }

  /// Whether the same place may lie in a square beside one's own: most stand clear of the edges.
  static bool reaches(Point point, Square here, Square square) {
    constexpr double room_m = 1.01 * same_place_m;
    return square.first ==
               square_of(point.x_m + static_cast<double>(square.first - here.first) * room_m) &&
           square.second ==
               square_of(point.y_m + static_cast<double>(square.second - here.second) * room_m);
  }

  std::vector<Point> points_;
  std::unordered_map<std::uint64_t, std::vector<Node>> squares_;
};

/// The drawing: nodes, the edges between them, and the lines that each edge is part of.
class Drawing {
 public:
  Drawing(const Outline& outline, const std::vector<Joint>& lines) : outline_(outline) {
    for (std::size_t i = 0; i < outline.size(); ++i) segments_.push_back(plane::side(outline, i));
    segments_.insert(segments_.end(), lines.begin(), lines.end());
    near_ = neighbours_of(segments_);
    for (std::size_t i = 0; i < segments_.size(); ++i) add_edges_of(i);
    drop_ends();
  }

  /// Rings around the faces: counter-clockwise around a face, clockwise around the outside of each
  /// connected component.
  std::vector<std::vector<Node>> rings() const {
    std::set<Pair> open;
    for (const auto& [edge, lines] : edges_) {
      open.insert(edge);
      open.insert({edge.second, edge.first});
    }
    std::vector<std::vector<Node>> found;
    while (!open.empty()) {
      found.emplace_back();
      for (Pair step = *open.begin(); open.erase(step) > 0; step = next(step)) {
        found.back().push_back(step.first);
      }
    }
    return found;
  }

  Outline points(const std::vector<Node>& ring) const {
    Outline outline;
    for (const Node node : ring) outline.push_back(nodes_[node]);
    return outline;
  }

  bool touches_outline(const std::vector<Node>& ring) const {
    return std::any_of(ring.begin(), ring.end(), [this](Node node) { return on_outline_[node]; });
  }

  std::vector<std::size_t> loose() const { return {loose_.begin(), loose_.end()}; }

 private:
  /// The nodes along a segment, in order.
  std::vector<Node> nodes_along(std::size_t which) {
    const Joint& segment = segments_[which];
    std::vector<std::pair<double, Node>> at;
    // On the segment itself: a line that ends a millimetre from a side must not bend the side.
    const auto add = [&](Point point) {
      const Point on_it = plane::nearest_on(segment, point);
      at.emplace_back(plane::distance(segment.from, on_it), nodes_.at(on_it));
    };
    add(segment.from);
    add(segment.to);
    for (const std::size_t i : near_[which]) {
      const Joint& other = segments_[i];
      if (plane::distance(other.from, segment) < same_place_m) add(other.from);
      if (plane::distance(other.to, segment) < same_place_m) add(other.to);
      if (const auto meets = crossing(segment, other)) add(*meets);
    }
    std::sort(at.begin(), at.end());
    std::vector<Node> nodes;
    for (const auto& [distance_m, node] : at) {
      if (nodes.empty() || nodes.back() != node) nodes.push_back(node);
    }
    return nodes;
  }

  void add_edges_of(std::size_t which) {
    const std::vector<Node> nodes = nodes_along(which);
    const bool is_side = which < outline_.size();
    on_outline_.resize(nodes_.size(), is_side);
    if (is_side) {
      for (const Node node : nodes) on_outline_[node] = true;
    }
    for (std::size_t i = 1; i < nodes.size(); ++i) {
      const Joint piece{nodes_[nodes[i - 1]], nodes_[nodes[i]]};
      if (!is_side && !contains(outline_, plane::middle(piece))) continue;
      auto& lines = edges_[edge_of(nodes[i - 1], nodes[i])];
      if (!is_side) lines.insert(which - outline_.size());
    }
  }

  /// Removes edges that bound nothing, starting from their ends.
  void drop_ends() {
    std::vector<std::set<Node>> beside(nodes_.size());
    for (const auto& [edge, lines] : edges_) {
      beside[edge.first].insert(edge.second);
      beside[edge.second].insert(edge.first);
    }
    std::vector<Node> ends;
    for (Node node = 0; node < nodes_.size(); ++node) {
      if (beside[node].size() == 1) ends.push_back(node);
    }
    while (!ends.empty()) {
      const Node end = ends.back();
      ends.pop_back();
      if (beside[end].size() != 1) continue;
      const Node other = *beside[end].begin();
      const auto edge = edges_.find(edge_of(end, other));
      loose_.insert(edge->second.begin(), edge->second.end());
      edges_.erase(edge);
      beside[end].clear();
      beside[other].erase(end);
      if (beside[other].size() == 1) ends.push_back(other);
    }
    for (const auto& [edge, lines] : edges_) {
      around_[edge.first].push_back(edge.second);
      around_[edge.second].push_back(edge.first);
    }
    for (auto& [node, others] : around_) sort_around(node, others);
  }

  void sort_around(Node node, std::vector<Node>& others) const {
    const auto angle = [&](Node other) {
      const Vector v = from_to(nodes_[node], nodes_[other]);
      return std::atan2(v.y, v.x);
    };
    std::sort(others.begin(), others.end(), [&](Node a, Node b) { return angle(a) < angle(b); });
  }

  /// At the end of a step, takes the sharpest turn to the left, around the face on the left.
  Pair next(Pair step) const {
    const std::vector<Node>& others = around_.at(step.second);
    const auto back = std::find(others.begin(), others.end(), step.first);
    const auto turn = back == others.begin() ? std::prev(others.end()) : std::prev(back);
    return {step.second, *turn};
  }

  const Outline& outline_;
  std::vector<Joint> segments_;
  std::vector<std::vector<std::size_t>> near_;
  Nodes nodes_;
  std::vector<bool> on_outline_;
  std::map<Pair, std::set<std::size_t>> edges_;
  std::map<Node, std::vector<Node>> around_;
  std::set<std::size_t> loose_;
};

bool fraction_a_point(const Outline& a, const Outline& b) {
  return std::any_of(a.begin(), a.end(),
                     [&b](Point point) { return std::find(b.begin(), b.end(), point) != b.end(); });
}

/// The area that a closed line inside a face cuts out is removed from the smallest face around it.
void take_out(std::vector<Face>& faces, const Outline& island) {
  Face* around = nullptr;
  for (Face& face : faces) {
    if (fraction_a_point(face.ring, island) || !contains(face.ring, island.front())) continue;
    if (around == nullptr || face.area_m2 < around->area_m2) around = &face;
  }
  if (around != nullptr) around->area_m2 += signed_area_m2(island);
}

}  // namespace

Faces cut(const Outline& outline, const std::vector<Joint>& lines) {
  const Drawing drawing(outline, lines);
  Faces cut;
  std::vector<Outline> islands;
  for (const std::vector<Node>& ring : drawing.rings()) {
    Outline points = drawing.points(ring);
    const double area = signed_area_m2(points);
    if (area > 0.0) {
      cut.faces.push_back({std::move(points), area});
    } else if (!drawing.touches_outline(ring)) {
      islands.push_back(std::move(points));
    }
  }
  for (const Outline& island : islands) take_out(cut.faces, island);
  cut.loose = drawing.loose();
  return cut;
}

}  // namespace slabtide::faces
