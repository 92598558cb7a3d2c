#include "slabtide/day/windows/band.h"

#include <algorithm>
#include <limits>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

double when(const Weighted& one) {
  return one.value.value_or(std::numeric_limits<double>::infinity());
}

double sum_of(const std::vector<Weighted>& values) {
  double sum = 0.0;
  for (const Weighted& one : values) sum += one.weight;
  return sum;
}

}  // namespace

std::optional<double> band_minutes(const TimeBand& band) {
  if (!band.early || !band.late) return std::nullopt;
  return seconds_between(*band.early, *band.late) / seconds_per_minute;
}

std::optional<double> weighted_quantile(std::vector<Weighted> values, double fraction) {
  std::sort(values.begin(), values.end(),
            [](const Weighted& a, const Weighted& b) { return when(a) < when(b); });
  const double target = fraction * sum_of(values);
  if (!(target > 0.0)) return std::nullopt;
  double before = 0.0;  // weight before the middle of the current value
  const Weighted* last = nullptr;
  double last_before = 0.0;
  for (const Weighted& one : values) {
    const double middle = before + 0.5 * one.weight;
    before += one.weight;
    if (!(one.weight > 0.0)) continue;
    if (middle >= target) {
      if (last == nullptr || !one.value) return one.value;
      const double way = (target - last_before) / (middle - last_before);
      return *last->value + way * (*one.value - *last->value);
    }
    last = &one;
    last_before = middle;
    if (!one.value) return std::nullopt;
  }
  return last == nullptr ? std::nullopt : last->value;
}

double fraction_that_comes(const std::vector<Weighted>& values) {
  const double all = sum_of(values);
  double come = 0.0;
  for (const Weighted& one : values) come += one.value ? one.weight : 0.0;
  return all > 0.0 ? come / all : 0.0;
}

}  // namespace slabtide
