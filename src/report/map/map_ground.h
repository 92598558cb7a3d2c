#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan_view.h"
#include "report/markup/label_places.h"
#include "report/markup/svg.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// On the smallest screen, in drawing units: 13 px there.
inline constexpr double map_type_size = 42.0;

/// The elements that all maps of the site share, defined once per page and drawn with `use`:
/// patterns, the outlines that clip cells, walls and trees ("map-ground"), and outlines, names,
/// scale bar and north arrow ("map-edges").
class MapGround {
 public:
  /// With labels of this size, in drawing units.
  MapGround(const Job& job, const PlanView& view, double type_size = map_type_size);

  /// An svg element of zero size that contains them.
  std::string definitions() const;
  /// What a picture of its own has without the definitions: walls and trees; outlines and labels.
  const std::string& below() const { return ground_; }
  const std::string& above() const { return edges_; }
  double type_size() const { return type_; }
  /// Where the zones' names and the other labels are.
  const LabelPlaces& labels() const { return labels_; }
  /// What stands in the zone: its name, or a letter if the name does not fit in.
  std::string label_of(std::size_t zone) const;
  /// The names of the zones that have a letter, as a list; an empty element if there are none.
  Element key() const;

  /// Ids for `clip-path`: the whole of a zone, its field, its border strip.
  static std::string whole_id(std::size_t zone);
  static std::string field_id(std::size_t zone);
  static std::string border_id(std::size_t zone);

 private:
  Element clips() const;
  Element ground();
  Element edges();
  void place_names();
  void place_name(std::size_t zone);
  void place_letter_outside(std::size_t zone);
  std::optional<LabelBox> place_inside(std::size_t zone, std::string_view words) const;
  Outline drawn(std::size_t zone) const;
  bool is_off_zones(const LabelBox& box) const;
  LabelBox name_box(double x, double y, std::string_view words) const;
  Element obstacle(const Obstacle& obstacle);
  Element wall(const Obstacle& obstacle);
  Element wall_name(const Obstacle& obstacle);
  Element tree(const Obstacle& obstacle);
  Element leader(std::size_t zone) const;
  Element scale_bar() const;
  Element north() const;

  const Job& job_;
  const PlanView& view_;
  double type_;
  LabelPlaces labels_;
  std::vector<std::optional<LabelBox>> names_;  ///< of each zone; none where there is no room
  std::vector<std::string> words_;              ///< of each zone: its name, or its letter
  std::string ground_;
  std::string edges_;
};

/// A reference to a part of the definitions: `<use href="#id"/>`.
Element use_of(std::string_view id);

}  // namespace slabtide
