#include "palette.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

namespace slabtide {

namespace {

struct Rgb {
  double red;
  double green;
  double blue;
};

/// The colours of cividis at 0, 1/9, ... 1.
constexpr std::array<Rgb, 10> cividis{{{0, 32, 77},
                                       {0, 51, 111},
                                       {57, 72, 107},
                                       {87, 92, 109},
                                       {112, 113, 115},
                                       {138, 135, 121},
                                       {166, 157, 117},
                                       {196, 181, 108},
                                       {228, 207, 91},
                                       {255, 234, 70}}};

int mix(double from, double to, double fraction) {
  return static_cast<int>(std::lround(from + (to - from) * fraction));
}

}  // namespace

std::string line_class(std::size_t index) {
  return fmt::format("line-{}", index % line_class_count + 1);
}

std::string sequential_colour(double fraction) {
  if (std::isnan(fraction)) throw std::invalid_argument("sequential_colour: not a number");
  const double place = std::clamp(fraction, 0.0, 1.0) * static_cast<double>(cividis.size() - 1);
  const std::size_t below = std::min(static_cast<std::size_t>(place), cividis.size() - 2);
  const double beyond = place - static_cast<double>(below);
  const Rgb& from = cividis[below];
  const Rgb& to = cividis[below + 1];
  return fmt::format("#{:02x}{:02x}{:02x}", mix(from.red, to.red, beyond),
                     mix(from.green, to.green, beyond), mix(from.blue, to.blue, beyond));
}

}  // namespace slabtide
