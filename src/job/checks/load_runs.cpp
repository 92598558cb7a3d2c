#include "load_runs.h"

#include <algorithm>
#include <cmath>

#include "job/geometry/zone_geometry.h"

namespace slabtide {

namespace {

/// The zone at this position of the placing sequence; null if the job has none of that name.
const Zone* zone_at(const Job& job, std::size_t place) {
  const auto found = std::find_if(job.zones.begin(), job.zones.end(), [&](const Zone& zone) {
    return zone.name == job.pour.placing_sequence[place];
  });
  return found == job.zones.end() ? nullptr : &*found;
}

bool starts_a_run(const Job& job, std::size_t place) {
  const Zone* const zone = zone_at(job, place);
  return place == 0 || (zone != nullptr && zone->placed_at);
}

}  // namespace

double ordered_m3(const Job& job, const Zone& zone) {
  return volume_m3(zone) * (1.0 + job.order.allowance_fraction);
}

double run_volume_m3(const Job& job, std::size_t from) {
  double volume = 0.0;
  for (std::size_t i = from; i < job.pour.placing_sequence.size(); ++i) {
    if (i > from && starts_a_run(job, i)) break;
    if (const Zone* const zone = zone_at(job, i)) volume += ordered_m3(job, *zone);
  }
  return volume;
}

std::size_t loads_of(double volume_m3, double load_size_m3) {
  return static_cast<std::size_t>(
      std::ceil(std::max((volume_m3 - nothing_m3) / load_size_m3, 0.0)));
}

std::size_t load_count(const Job& job) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < job.pour.placing_sequence.size(); ++i) {
    if (!starts_a_run(job, i)) continue;
    count += loads_of(run_volume_m3(job, i), job.order.load_size_m3);
  }
  return count;
}

}  // namespace slabtide
