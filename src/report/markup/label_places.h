#pragma once

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

namespace slabtide {

/// The position of a label on a drawing: its centre and its size, in drawing units.
struct LabelBox {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;

  bool overlaps(const LabelBox& other) const;
  /// Moved, where it must be, into a frame that begins at 0, 0, and off its sides by `gap`.
  LabelBox within(double frame_width, double frame_height, double gap) const;
};

/// Approximately the space that `text` takes at a type size.
LabelBox label_box(double x, double y, std::string_view text, double size);

/// Keeps labels from overlapping: a label is placed only where no earlier one is.
class LabelPlaces {
 public:
  bool is_free(const LabelBox& box) const;
  void take(const LabelBox& box) { taken_.push_back(box); }
  /// Takes the box if it is free; returns whether it was.
  bool claim(const LabelBox& box);
  /// The free place nearest to the box's own in a frame that begins at 0, 0, among those that suit;
  /// none if there is no such place.
  std::optional<LabelBox> nearest_free(
      LabelBox box, double frame_width, double frame_height,
      const std::function<bool(const LabelBox&)>& suits = [](const LabelBox&) {
        return true;
      }) const;

 private:
  std::vector<LabelBox> taken_;
};

/// Heights for labels that should be at `wanted`, moved so that they are at least `apart` from each
/// other and within [low, high] as far as they fit; as close to `wanted` as possible and in the
/// same order.
std::vector<double> spread_labels(const std::vector<double>& wanted, double apart, double low,
                                  double high);

}  // namespace slabtide
