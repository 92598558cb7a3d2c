#include "faces.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
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
    Node first = none;
    for (const Square& square : around(here)) {
      if (reaches(point, here, square)) first = std::min(first, first_at(point, square));
    }
    if (first != none) return first;
    points_.push_back(point);
    const auto [newest, is_new] = newest_in_.try_emplace(key(here), points_.size() - 1);
    older_.push_back(is_new ? none : newest->second);
    newest->second = points_.size() - 1;
    return points_.size() - 1;
  }

 private:
  using Square = std::pair<std::int64_t, std::int64_t>;

  static constexpr double square_m = 0.01;
  static constexpr Node none = std::numeric_limits<Node>::max();

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
    const auto on_this_side = [](double m, std::int64_t own, std::int64_t other) {
      return other == own || other == square_of(m + static_cast<double>(other - own) * room_m);
    };
    return on_this_side(point.x_m, here.first, square.first) &&
           on_this_side(point.y_m, here.second, square.second);
  }

  Node first_at(Point point, Square square) const {
    const auto newest = newest_in_.find(key(square));
    Node first = none;
    for (Node node = newest == newest_in_.end() ? none : newest->second; node != none;
         node = older_[node]) {
      if (plane::distance(points_[node], point) < same_place_m) first = std::min(first, node);
    }
    return first;
  }

  std::vector<Point> points_;
  std::vector<Node> older_;  ///< for each, the one before it in its square
  std::unordered_map<std::uint64_t, Node> newest_in_;
};

/// The drawing: nodes, the edges between them, and the lines that each edge is part of.
class Drawing {
 public:
  Drawing(const Outline& outline, const std::vector<Joint>& lines) : outline_(outline) {
    for (std::size_t i = 0; i < outline.size(); ++i) segments_.push_back(plane::side(outline, i));
    segments_.insert(segments_.end(), lines.begin(), lines.end());
    near_ = neighbours_of(segments_);
    for (std::size_t i = 0; i < segments_.size(); ++i) add_edges_of(i);
    std::sort(parts_.begin(), parts_.end());
    drop_ends();
    sort_steps();
  }

  /// Rings around the faces: counter-clockwise around a face, clockwise around the outside of each
  /// connected component.
  std::vector<std::vector<Node>> rings() const {
    std::vector<bool> done(steps_.size());
    std::vector<std::vector<Node>> found;
    for (std::size_t first = 0; first < steps_.size(); ++first) {
      if (done[first]) continue;
      found.emplace_back();
      for (std::size_t step = first; !done[step]; step = next(step)) {
        done[step] = true;
        found.back().push_back(steps_[step].first);
      }
    }
    return found;
  }

  Outline points(const std::vector<Node>& ring) const {
    Outline outline;
    outline.reserve(ring.size());
    for (const Node node : ring) outline.push_back(nodes_[node]);
    return outline;
  }

  bool touches_outline(const std::vector<Node>& ring) const {
    return std::any_of(ring.begin(), ring.end(), [this](Node node) { return on_outline_[node]; });
  }

  std::vector<std::size_t> loose() const { return {loose_.begin(), loose_.end()}; }

 private:
  /// An edge as part of a line; sides are no line.
  using Part = std::pair<Pair, std::size_t>;
  static constexpr std::size_t no_line = std::numeric_limits<std::size_t>::max();

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

  /// The sides come first. A line is inside or outside from one place on the outline to the next.
  void add_edges_of(std::size_t which) {
    const std::vector<Node> nodes = nodes_along(which);
    const bool is_side = which < outline_.size();
    on_outline_.resize(nodes_.size(), is_side);
    if (is_side) {
      for (const Node node : nodes) on_outline_[node] = true;
    }
    bool is_inside = false;
    for (std::size_t i = 1; i < nodes.size(); ++i) {
      const Joint piece{nodes_[nodes[i - 1]], nodes_[nodes[i]]};
      if (!is_side && (i == 1 || on_outline_[nodes[i - 1]])) {
        is_inside = contains(outline_, plane::middle(piece));
      }
      if (!is_side && !is_inside) continue;
      parts_.emplace_back(edge_of(nodes[i - 1], nodes[i]),
                          is_side ? no_line : which - outline_.size());
    }
  }

  /// Removes edges that bound nothing, starting from their ends.
  void drop_ends() {
    std::vector<std::vector<std::size_t>> edges_at(nodes_.size());  // the first part of each
    for (std::size_t i = 0; i < parts_.size(); ++i) {
      if (i > 0 && parts_[i].first == parts_[i - 1].first) continue;
      edges_at[parts_[i].first.first].push_back(i);
      edges_at[parts_[i].first.second].push_back(i);
    }
    std::vector<Node> ends;
    for (Node node = 0; node < nodes_.size(); ++node) {
      if (edges_at[node].size() == 1) ends.push_back(node);
    }
    while (!ends.empty()) {
      const Node end = ends.back();
      ends.pop_back();
      if (edges_at[end].size() != 1) continue;
      const std::size_t first = edges_at[end].front();
      const Pair edge = parts_[first].first;
      for (std::size_t i = first; i < parts_.size() && parts_[i].first == edge; ++i) {
        if (parts_[i].second != no_line) loose_.insert(parts_[i].second);
      }
      const Node other = edge.first == end ? edge.second : edge.first;
      edges_at[end].clear();
      std::erase(edges_at[other], first);
      if (edges_at[other].size() == 1) ends.push_back(other);
    }
    for (Node node = 0; node < nodes_.size(); ++node) {
      for (const std::size_t first : edges_at[node]) {
        const Pair edge = parts_[first].first;
        steps_.emplace_back(node, edge.first == node ? edge.second : edge.first);
      }
    }
  }

  /// Finds for each step the next one clockwise from the same node.
  void sort_steps() {
    std::sort(steps_.begin(), steps_.end());
    first_step_.assign(nodes_.size() + 1, 0);
    for (const Pair& step : steps_) ++first_step_[step.first + 1];
    std::partial_sum(first_step_.begin(), first_step_.end(), first_step_.begin());
    clockwise_.resize(steps_.size());
    std::vector<std::pair<double, std::size_t>> around;
    for (Node node = 0; node < nodes_.size(); ++node) {
      around.clear();
      for (std::size_t i = first_step_[node]; i < first_step_[node + 1]; ++i) {
        const Vector v = from_to(nodes_[node], nodes_[steps_[i].second]);
        around.emplace_back(std::atan2(v.y, v.x), i);
      }
      std::sort(around.begin(), around.end());
      for (std::size_t i = 0; i < around.size(); ++i) {
        clockwise_[around[i].second] = around[i == 0 ? around.size() - 1 : i - 1].second;
      }
    }
  }

  /// At the end of a step, takes the sharpest turn to the left, around the face on the left.
  std::size_t next(std::size_t step) const {
    const auto [from, to] = steps_[step];
    const auto begin = steps_.begin() + static_cast<std::ptrdiff_t>(first_step_[to]);
    const auto end = steps_.begin() + static_cast<std::ptrdiff_t>(first_step_[to + 1]);
    const auto back = std::lower_bound(begin, end, Pair{to, from});
    return clockwise_[static_cast<std::size_t>(back - steps_.begin())];
  }

  const Outline& outline_;
  std::vector<Joint> segments_;
  std::vector<std::vector<std::size_t>> near_;
  Nodes nodes_;
  std::vector<bool> on_outline_;
  std::vector<Part> parts_;              ///< in order, so that those of one edge stand together
  std::vector<Pair> steps_;              ///< in order
  std::vector<std::size_t> first_step_;  ///< from each node
  std::vector<std::size_t> clockwise_;
  std::set<std::size_t> loose_;
};

bool have_common_point(const Outline& a, const Outline& b) {
  return std::any_of(a.begin(), a.end(),
                     [&b](Point point) { return std::find(b.begin(), b.end(), point) != b.end(); });
}

/// The area that a closed line inside a face cuts out is removed from the smallest face around it.
void take_out(std::vector<Face>& faces, const Outline& island) {
  Face* around = nullptr;
  for (Face& face : faces) {
    if (have_common_point(face.ring, island) || !contains(face.ring, island.front())) continue;
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
