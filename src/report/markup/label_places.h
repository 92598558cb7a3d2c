#pragma once

#include <string_view>
#include <vector>

namespace slabtide {

/// Where on a drawing a label stands: its middle and its size, in drawing units.
struct LabelBox {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;

  bool overlaps(const LabelBox& other) const;
};

/// About the room `text` takes at a size of type.
LabelBox label_box(double x, double y, std::string_view text, double size);

/// Keeps labels off each other: the first comes to stand, a later one only where it is free.
class LabelPlaces {
 public:
  bool is_free(const LabelBox& box) const;
  void take(const LabelBox& box) { taken_.push_back(box); }
  /// Takes the box if it is free.
  bool claim(const LabelBox& box);

 private:
  std::vector<LabelBox> taken_;
};

/// Heights at which labels that want to stand at `wanted` can stand without touching, at least
/// `apart` from each other and within [low, high] as far as they fit: as near as may be, in the
/// same order. Entries as in `wanted`.
std::vector<double> spread_labels(const std::vector<double>& wanted, double apart, double low,
                                  double high);

}  // namespace slabtide
