#include "faces.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "plane.h"
#include "slabtide/job/zone_geometry.h"

namespace slabtide::faces {

namespace {

using plane::cross;
using plane::from_to;
using plane::same_place_m;
using plane::Vector;

using Node = std::size_t;
/// Two nodes, the lower first; or a step from the first to the second.
using Pair = std::pair<Node, Node>;

Pair edge_of(Node a, Node b) { return {std::min(a, b), std::max(a, b)}; }

/// Where two segments that are not parallel cross.
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

/// The drawing: nodes, edges between them, and which lines an edge is part of.
class Drawing {
 public:
  Drawing(const Outline& outline, const std::vector<Joint>& lines) : outline_(outline) {
    for (std::size_t i = 0; i < outline.size(); ++i) segments_.push_back(plane::side(outline, i));
    segments_.insert(segments_.end(), lines.begin(), lines.end());
    for (std::size_t i = 0; i < segments_.size(); ++i) add_edges_of(i);
    drop_ends();
  }

  /// Rings around the faces: counter-clockwise around a face, clockwise around the outside of
  /// what hangs together.
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

  std::vector<std::size_t> loose() const { return {loose_.begin(), loose_.end()}; }

 private:
  Node node_at(Point point) {
    for (Node i = 0; i < nodes_.size(); ++i) {
      if (plane::distance(nodes_[i], point) < same_place_m) return i;
    }
    nodes_.push_back(point);
    return nodes_.size() - 1;
  }

  /// The nodes along a segment, in order.
  std::vector<Node> nodes_along(std::size_t which) {
    const Joint& segment = segments_[which];
    std::vector<std::pair<double, Node>> at;
    // On the segment itself: a line that ends a millimetre off a side must not bend it.
    const auto add = [&](Point point) {
      const Point on_it = plane::nearest_on(segment, point);
      at.emplace_back(plane::distance(segment.from, on_it), node_at(on_it));
    };
    add(segment.from);
    add(segment.to);
    for (std::size_t i = 0; i < segments_.size(); ++i) {
      const Joint& other = segments_[i];
      if (i == which) continue;
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
    for (std::size_t i = 1; i < nodes.size(); ++i) {
      const Joint piece{nodes_[nodes[i - 1]], nodes_[nodes[i]]};
      if (!is_side && !contains(outline_, plane::middle(piece))) continue;
      auto& lines = edges_[edge_of(nodes[i - 1], nodes[i])];
      if (!is_side) lines.insert(which - outline_.size());
    }
  }

  /// Takes away, end by end, what bounds nothing.
  void drop_ends() {
    for (bool dropped = true; dropped;) {
      dropped = false;
      std::map<Node, int> degree;
      for (const auto& [edge, lines] : edges_) {
        ++degree[edge.first];
        ++degree[edge.second];
      }
      for (auto it = edges_.begin(); it != edges_.end();) {
        const bool ends = degree[it->first.first] == 1 || degree[it->first.second] == 1;
        if (ends) loose_.insert(it->second.begin(), it->second.end());
        dropped = dropped || ends;
        it = ends ? edges_.erase(it) : std::next(it);
      }
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

  /// From the end of a step, the sharpest turn to the left: around the face on the left.
  Pair next(Pair step) const {
    const std::vector<Node>& others = around_.at(step.second);
    const auto back = std::find(others.begin(), others.end(), step.first);
    const auto turn = back == others.begin() ? std::prev(others.end()) : std::prev(back);
    return {step.second, *turn};
  }

  const Outline& outline_;
  std::vector<Joint> segments_;
  std::vector<Point> nodes_;
  std::map<Pair, std::set<std::size_t>> edges_;
  std::map<Node, std::vector<Node>> around_;
  std::set<std::size_t> loose_;
};

bool share_a_point(const Outline& a, const Outline& b) {
  return std::any_of(a.begin(), a.end(),
                     [&b](Point point) { return std::find(b.begin(), b.end(), point) != b.end(); });
}

/// What a closed line inside a face cuts out of it belongs to the smallest face around it.
void take_out(std::vector<Face>& faces, const Outline& island) {
  Face* around = nullptr;
  for (Face& face : faces) {
    if (share_a_point(face.ring, island) || !contains(face.ring, island.front())) continue;
    if (around == nullptr || face.area_m2 < around->area_m2) around = &face;
  }
  if (around != nullptr) around->area_m2 += signed_area_m2(island);
}

}  // namespace

Faces cut(const Outline& outline, const std::vector<Joint>& lines) {
  const Drawing drawing(outline, lines);
  Faces cut;
  std::vector<Outline> outsides;
  for (const std::vector<Node>& ring : drawing.rings()) {
    Outline points = drawing.points(ring);
    const double area = signed_area_m2(points);
    if (area > 0.0) {
      cut.faces.push_back({std::move(points), area});
    } else {
      outsides.push_back(std::move(points));
    }
  }
  for (const Outline& island : outsides) take_out(cut.faces, island);
  cut.loose = drawing.loose();
  return cut;
}

}  // namespace slabtide::faces
