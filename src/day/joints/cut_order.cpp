#include "cut_order.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <iterator>
#include <limits>
#include <optional>
#include <stdexcept>
#include <tuple>
#include <utility>

#include "core/rounded.h"
#include "day/geometry/corners.h"
#include "day/geometry/plane.h"
#include "job/geometry/zone_geometry.h"

namespace slabtide {

namespace {

using plane::Vector;

/// A joint within 45 degrees of perpendicular to a run crosses it.
constexpr double crosses_cosine = 0.7071;
/// The number of places along a joint at which the pieces it cuts are looked up.
constexpr int looks = 8;

Vector direction(const Joint& joint) { return plane::unit(plane::from_to(joint.from, joint.to)); }

/// Distance of a place from the middle of a panel, along its longer side.
double off_middle_m(const Panel& piece, Point place) {
  const Vector along{piece.along_x, piece.along_y};
  double min = 0.0;
  double max = 0.0;
  for (const Point& corner : piece.outline) {
    const double at = plane::dot(along, plane::from_to(place, corner));
    min = std::min(min, at);
    max = std::max(max, at);
  }
  return std::abs(0.5 * (min + max));
}

/// An uncut piece, its bounding box, and the cuts that end inside it.
struct Piece {
  Panel panel;
  Point low;
  Point high;
  std::vector<Joint> loose;
};

Piece piece_of_panel(Panel panel, std::vector<Joint> loose) {
  constexpr double far_m = std::numeric_limits<double>::infinity();
  Piece piece{std::move(panel), {far_m, far_m}, {-far_m, -far_m}, std::move(loose)};
  for (const Point& corner : piece.panel.outline) {
    piece.low = {std::min(piece.low.x_m, corner.x_m), std::min(piece.low.y_m, corner.y_m)};
    piece.high = {std::max(piece.high.x_m, corner.x_m), std::max(piece.high.y_m, corner.y_m)};
  }
  return piece;
}

/// Whether a joint is close enough to the piece to cut it.
bool may_cut(const Joint& joint, const Piece& piece) {
  constexpr double room_m = 2.0 * plane::same_place_m;
  const auto apart = [&](double Point::*axis) {
    const auto [low, high] = std::minmax(joint.from.*axis, joint.to.*axis);
    return high < piece.low.*axis - room_m || low > piece.high.*axis + room_m;
  };
  return !apart(&Point::x_m) && !apart(&Point::y_m);
}

class WorkingOrder {
 public:
  WorkingOrder(const Zone& zone, const ZoneJoints& plan, const std::vector<JointTurn>& turns,
               CutCourses known)
      : zone_(zone),
        plan_(plan),
        turns_(turns),
        known_(std::move(known)),
        corners_(re_entrant_corners(zone.outline)),
        left_(plan.joints.size(), true) {}

  CutCourse all() {
    take_corners();
    if (zone_.tied && shows_tied_edge(plan_.isolation)) {
      take_all(CutReason::tied_edge, CutReason::tied_edge,
               [this](std::size_t joint) { return starts_at_tie(joint); });
    }
    take_all(CutReason::longest_run, CutReason::next_along, [](std::size_t) { return true; });
    return std::move(course_);
  }

 private:
  using Wanted = std::function<bool(std::size_t)>;

  const Joint& joint(std::size_t i) const { return plan_.joints[i]; }

  bool starts_at_corner(std::size_t i) const {
    return std::any_of(corners_.begin(), corners_.end(),
                       [&](Point corner) { return relieves(joint(i), corner); });
  }

  bool starts_at_tie(std::size_t i) const {
    return at_tied_edge(plan_.isolation, joint(i).from) ||
           at_tied_edge(plan_.isolation, joint(i).to);
  }

  std::vector<std::size_t> left_of(const Wanted& wanted) const {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < left_.size(); ++i) {
      if (left_[i] && wanted(i)) found.push_back(i);
    }
    return found;
  }

  /// Only the pieces that the cut comes near change; in which order they stand does not matter.
  void divide_by(const Joint& cut) {
    const std::size_t before = pieces_.size();
    for (std::size_t i = 0; i < before; ++i) {
      if (!may_cut(cut, pieces_[i])) continue;
      std::vector<Piece> parts;
      divide(std::move(pieces_[i]), cut, parts);
      pieces_[i] = std::move(parts.front());
      std::move(parts.begin() + 1, parts.end(), std::back_inserter(pieces_));
    }
  }

  /// Earlier cuts that end inside a piece are used again, because the new cut may reach them.
  static void divide(Piece piece, const Joint& cut, std::vector<Piece>& into) {
    std::vector<Joint> lines = piece.loose;
    lines.push_back(cut);
    Panels parts = split_into_panels(piece.panel.outline, lines);
    std::vector<Joint> loose;
    for (const std::size_t i : parts.loose_joints) loose.push_back(lines[i]);
    if (parts.panels.size() < 2) {
      piece.loose = std::move(loose);
      into.push_back(std::move(piece));
      return;
    }
    for (Panel& part : parts.panels) into.push_back(piece_of_panel(std::move(part), loose));
  }

  /// Divides by the cuts taken since: a course that is known needs no pieces.
  void catch_up() {
    if (pieces_.empty()) {
      for (Panel& panel : split_into_panels(zone_.outline, {}).panels) {
        pieces_.push_back(piece_of_panel(std::move(panel), {}));
      }
    }
    for (; divided_ < course_.joints.size(); ++divided_) divide_by(joint(course_.joints[divided_]));
  }

  std::vector<const Panel*> pieces_of(const Joint& cut) const {
    std::vector<const Panel*> found;
    const Vector along = plane::from_to(cut.from, cut.to);
    for (const Piece& piece : pieces_) {
      if (!may_cut(cut, piece)) continue;
      for (int k = 0; k < looks; ++k) {
        const Point place = plane::moved(cut.from, along, (k + 0.5) / looks);
        if (!plane::encloses(piece.panel.outline, place)) continue;
        found.push_back(&piece.panel);
        break;
      }
    }
    return found;
  }

  StressCase piece_of(const Joint& cut) const {
    StressCase worst{0.0, zone_.thickness_m, false, false};
    const Vector square = plane::left_of(direction(cut));
    for (const Panel* piece : pieces_of(cut)) {
      worst.uncut_length_m = std::max(worst.uncut_length_m, extent_m(*piece, square.x, square.y));
      worst.tied = worst.tied || (zone_.tied && reaches_tied_edge(plan_.isolation, piece->outline));
      worst.re_entrant_corner =
          worst.re_entrant_corner || !re_entrant_corners(piece->outline).empty();
    }
    return worst;
  }

  void take(std::size_t i, CutReason reason) {
    if (const Cut* cut = known_.take(i)) {
      course_.cuts.push_back(*cut);
    } else {
      catch_up();
      course_.cuts.push_back({joint(i), plane::length_m(joint(i)), reason, piece_of(joint(i))});
    }
    course_.joints.push_back(i);
    left_[i] = false;
  }

  std::size_t ready_first(const std::vector<std::size_t>& joints) const {
    return *std::min_element(joints.begin(), joints.end(), [this](std::size_t a, std::size_t b) {
      return rounded(turns_[a].ready_s) < rounded(turns_[b].ready_s);
    });
  }

  /// Orders joints one after another, starting at the end that is ready first.
  std::vector<std::size_t> consecutive(std::vector<std::size_t> joints) const {
    std::stable_sort(joints.begin(), joints.end(), [this](std::size_t a, std::size_t b) {
      return rounded(turns_[a].along_m) < rounded(turns_[b].along_m);
    });
    if (rounded(turns_[joints.back()].ready_s) < rounded(turns_[joints.front()].ready_s)) {
      std::reverse(joints.begin(), joints.end());
    }
    return joints;
  }

  void take_corners() {
    std::vector<bool> at_corner(left_.size());
    for (std::size_t i = 0; i < left_.size(); ++i) at_corner[i] = starts_at_corner(i);
    while (true) {
      const auto joints = left_of([&at_corner](std::size_t i) { return at_corner[i]; });
      if (joints.empty()) return;
      take(ready_first(joints), CutReason::corner);
    }
  }

  std::optional<std::size_t> middle_of(const std::vector<std::size_t>& joints) {
    const std::optional<std::size_t>* known = known_.middle();
    if (known == nullptr) catch_up();
    const std::optional<std::size_t> middle = known != nullptr ? *known : middle_of_longest(joints);
    course_.middles.emplace(course_.joints.size(), middle);
    return middle;
  }

  /// The joint that divides the longest piece most evenly; empty if none crosses a piece.
  std::optional<std::size_t> middle_of_longest(const std::vector<std::size_t>& joints) const {
    std::optional<std::size_t> best;
    std::pair<double, double> best_key;
    for (const std::size_t i : joints) {
      for (const Panel* piece : pieces_of(joint(i))) {
        const Vector along{piece->along_x, piece->along_y};
        if (std::abs(plane::dot(along, direction(joint(i)))) > crosses_cosine) continue;
        // Lengths are rounded to the centimetre, so that rounding errors do not decide.
        constexpr double per_cm = 100.0;
        const std::pair key{-std::round(piece->length_m * per_cm),
                            std::round(off_middle_m(*piece, plane::middle(joint(i))) * per_cm)};
        if (best && !(key < best_key)) continue;
        best = i;
        best_key = key;
      }
    }
    return best;
  }

  /// Takes the middle one first, then the others along the zone; those parallel to it before those
  /// across.
  void take_all(CutReason first, CutReason then, const Wanted& wanted) {
    const auto joints = left_of(wanted);
    if (joints.empty()) return;
    const std::optional<std::size_t> middle = middle_of(joints);
    const std::size_t leader = middle.value_or(ready_first(joints));
    take(leader, middle ? first : then);
    const Vector way = direction(joint(leader));
    const auto runs_alike = [&](std::size_t i) {
      return wanted(i) && std::abs(plane::dot(way, direction(joint(i)))) > crosses_cosine;
    };
    for (const Wanted& which : {Wanted(runs_alike), wanted}) {
      const auto rest = left_of(which);
      if (rest.empty()) continue;
      for (const std::size_t next : consecutive(rest)) take(next, then);
    }
  }

  const Zone& zone_;
  const ZoneJoints& plan_;
  const std::vector<JointTurn>& turns_;
  CutCourses known_;
  std::vector<Point> corners_;
  std::vector<bool> left_;
  std::vector<Piece> pieces_;
  std::size_t divided_ = 0;  ///< so many of the cuts taken divide `pieces_`
  CutCourse course_;
};

void check(const Zone& zone, const ZoneJoints& joints, const std::vector<JointTurn>& turns) {
  if (const auto fault = outline_fault(zone.outline)) {
    throw std::invalid_argument("the zone's outline cannot be used: " + *fault);
  }
  for (const Joint& joint : joints.joints) {
    if (!(perimeter_m({joint.from, joint.to}) > 0.0)) {
      throw std::invalid_argument("a joint has no length");
    }
  }
  if (turns.size() != joints.joints.size()) throw std::invalid_argument("not one turn a joint");
  for (const JointTurn& turn : turns) {
    if (!std::isfinite(turn.along_m) || !std::isfinite(turn.ready_s)) {
      throw std::invalid_argument("a joint's turn is no number");
    }
  }
}

}  // namespace

const Cut* CutCourses::take(std::size_t joint) {
  std::erase_if(courses_, [&](const auto& course) { return course->joints[taken_] != joint; });
  return courses_.empty() ? nullptr : &courses_.front()->cuts[taken_++];
}

const std::optional<std::size_t>* CutCourses::middle() const {
  if (courses_.empty()) return nullptr;
  const auto found = courses_.front()->middles.find(taken_);
  return found == courses_.front()->middles.end() ? nullptr : &found->second;
}

CutCourse course_of_cuts(const Zone& zone, const ZoneJoints& joints,
                         const std::vector<JointTurn>& turns, CutCourses known) {
  check(zone, joints, turns);
  return WorkingOrder(zone, joints, turns, std::move(known)).all();
}

std::vector<Cut> order_cuts(const Zone& zone, const ZoneJoints& joints,
                            const std::vector<JointTurn>& turns) {
  return course_of_cuts(zone, joints, turns, {}).cuts;
}

}  // namespace slabtide
