#include "caution_watch.h"

#include <algorithm>
#include <cmath>

namespace slabtide {

Steps steps_between(const TimeGrid& grid, UtcTime from, UtcTime to) {
  const double first = std::max(0.0, seconds_between(grid.start, from) / grid.step_s);
  const double last = std::max(0.0, seconds_between(grid.start, to) / grid.step_s);
  const auto clamp = [&grid](double step) {
    return std::min(grid.count, static_cast<std::size_t>(std::ceil(step)));
  };
  return {clamp(first), clamp(last)};
}

PlasticSpan plastic_span(const PourRun& run, const std::vector<ZonePlan>& zones) {
  PlasticSpan span{zones.front().placed.start, zones.front().placed.end};
  for (const ZonePlan& zone : zones) {
    span.from = std::min(span.from, zone.placed.start);
    span.to = std::max(span.to, zone.whole.final_set.value_or(run.at(run.weather.grid.end_s())));
  }
  return span;
}

}  // namespace slabtide
