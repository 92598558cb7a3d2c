#include "slabtide/day/compare/crossing.h"

#include <stdexcept>

#include "core/parallel.h"

namespace slabtide {

namespace {

double halved_to(const std::function<bool(double)>& holds, double low, bool at_low, double high,
                 double to) {
  while (high - low > to) {
    const double middle = 0.5 * (low + high);
    (holds(middle) == at_low ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

Crossing find_crossing(const std::function<bool(double)>& holds, double low, double high,
                       int points, double to, int threads) {
  if (!(low < high) || points < 2 || !(to > 0.0)) {
    throw std::invalid_argument("find_crossing: no range, no points or no width");
  }
  const auto count = static_cast<std::size_t>(points);
  const double step = (high - low) / static_cast<double>(count - 1);
  const auto point = [&](std::size_t i) { return low + step * static_cast<double>(i); };
  std::vector<char> held(count);
  in_parallel(count, threads, [&](std::size_t i) { held[i] = holds(point(i)) ? 1 : 0; });
  Crossing crossing;
  crossing.at_least = held.front() != 0;
  crossing.at_most = held.back() != 0;
  for (std::size_t i = 1; i < count; ++i) {
    if (held[i] == held[i - 1]) continue;
    crossing.turns.push_back(halved_to(holds, point(i - 1), held[i - 1] != 0, point(i), to));
  }
  return crossing;
}

}  // namespace slabtide
