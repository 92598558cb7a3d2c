#pragma once

#include <string>
#include <vector>

#include "plan_view.h"
#include "report/markup/label_places.h"
#include "report/markup/svg.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The elements that all maps of the site share, defined once per page and drawn with `use`:
/// patterns, the outlines that clip cells, walls and trees ("map-ground"), and outlines, names,
/// scale bar and north arrow ("map-edges").
class MapGround {
 public:
  MapGround(const Job& job, const PlanView& view);

  /// An svg element of zero size that contains them.
  std::string definitions() const;
  /// Where the zones' names and the other labels are.
  const LabelPlaces& labels() const { return labels_; }
  /// The zone's name, or its number in the job if there are too many zones for names.
  std::string label_of(std::size_t zone) const;

  /// Ids for `clip-path`: the whole of a zone, its field, its border strip.
  static std::string whole_id(std::size_t zone);
  static std::string field_id(std::size_t zone);
  static std::string border_id(std::size_t zone);

 private:
  Element clips() const;
  Element ground();
  Element edges();
  void place_names();
  LabelBox place_name(std::size_t zone) const;
  bool is_numbered() const;
  LabelBox corner_of(std::size_t zone, LabelBox home) const;
  Element obstacle(const Obstacle& obstacle);
  Element wall(const Obstacle& obstacle);
  Element tree(const Obstacle& obstacle);
  Element scale_bar() const;
  Element north() const;

  const Job& job_;
  const PlanView& view_;
  LabelPlaces labels_;
  std::vector<LabelBox> names_;
  std::string ground_;
  std::string edges_;
};

/// A reference to a part of the definitions: `<use href="#id"/>`.
Element use_of(std::string_view id);

inline constexpr double map_type_size = 32.0;  ///< on the smallest screen, in drawing units

}  // namespace slabtide
