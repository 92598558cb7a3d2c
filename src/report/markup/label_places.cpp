#include "label_places.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/rounded.h"
#include "core/text.h"

namespace slabtide {

namespace {

/// Mean width of a character as a fraction of the type size, for a common sans serif (ours).
constexpr double column_fraction = 0.58;
constexpr double line_fraction = 1.1;

}  // namespace

bool LabelBox::overlaps(const LabelBox& other) const {
  return 2.0 * std::abs(x - other.x) < width + other.width &&
         2.0 * std::abs(y - other.y) < height + other.height;
}

LabelBox LabelBox::within(double frame_width, double frame_height, double gap) const {
  const auto inside = [](double middle, double least, double frame) {
    return std::max(least, std::min(middle, frame - least));
  };
  return {inside(x, width / 2.0 + gap, frame_width), inside(y, height / 2.0, frame_height), width,
          height};
}

LabelBox label_box(double x, double y, std::string_view text, double size) {
  return {x, y, column_fraction * size * static_cast<double>(display_width(text)),
          line_fraction * size};
}

bool LabelPlaces::is_free(const LabelBox& box) const {
  return std::none_of(taken_.begin(), taken_.end(),
                      [&](const LabelBox& other) { return other.overlaps(box); });
}

bool LabelPlaces::claim(const LabelBox& box) {
  if (!is_free(box)) return false;
  take(box);
  return true;
}

std::optional<LabelBox> LabelPlaces::nearest_free(
    LabelBox box, double frame_width, double frame_height,
    const std::function<bool(const LabelBox&)>& suits) const {
  constexpr double step = 10.0;
  const LabelBox home = box.within(frame_width, frame_height, 0.0);
  if (is_free(home) && suits(home)) return home;
  std::optional<LabelBox> best;
  const auto away = [&box](const LabelBox& other) {
    return std::hypot(other.x - box.x, other.y - box.y);
  };
  const auto places = [step](double room) { return static_cast<int>(room / step) + 1; };
  const double room_x = frame_width - box.width;
  const double room_y = frame_height - box.height;
  for (int row = 0; room_y >= 0.0 && row < places(room_y); ++row) {
    for (int column = 0; room_x >= 0.0 && column < places(room_x); ++column) {
      const LabelBox tried{box.width / 2.0 + column * step, box.height / 2.0 + row * step,
                           box.width, box.height};
      if (best && away(tried) >= away(*best)) continue;
      if (is_free(tried) && suits(tried)) best = tried;
    }
  }
  return best;
}

std::vector<double> spread_labels(const std::vector<double>& wanted, double apart, double low,
                                  double high) {
  std::vector<std::size_t> order(wanted.size());
  std::iota(order.begin(), order.end(), 0U);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return rounded(wanted[a]) < rounded(wanted[b]);
  });
  std::vector<double> placed = wanted;
  double next = low;
  for (const std::size_t i : order) {
    placed[i] = std::max(placed[i], next);
    next = placed[i] + apart;
  }
  std::reverse(order.begin(), order.end());
  double max = high;
  for (const std::size_t i : order) {
    placed[i] = std::min(placed[i], max);
    max = placed[i] - apart;
  }
  return placed;
}

}  // namespace slabtide
