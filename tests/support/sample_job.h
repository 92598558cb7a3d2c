#pragma once

#include <initializer_list>

#include "slabtide/job/model/job.h"

// Jobs built by hand for the tests of module day: no file, UTC, typed weather.

namespace slabtide::test {

/// A rectangle with its south-west corner at (x, y), `width` to the east and `depth` to the north.
inline Outline rectangle(double x_m, double y_m, double width_m, double depth_m) {
  return {{x_m, y_m}, {x_m + width_m, y_m}, {x_m + width_m, y_m + depth_m}, {x_m, y_m + depth_m}};
}

inline Zone zone_named(const std::string& name, Outline outline, Finish finish = Finish::broom) {
  Zone zone;
  zone.name = name;
  zone.outline = std::move(outline);
  zone.thickness_m = 0.1016;
  zone.finish = finish;
  return zone;
}

/// A mild clear day in May at 45 N on the prime meridian, where UTC is close to solar time.
inline Job sample_job(std::initializer_list<Zone> zones) {
  Job job;
  job.name = "sample";
  job.site.latitude_deg = 45.0;
  job.pour.date = Date(2026, 5, 14);
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(8));
  TypedWeather weather;
  weather.high_c = 20.0;
  weather.low_c = 8.0;
  weather.wind_10m_m_s = 3.0;
  job.weather = weather;
  job.zones = zones;
  for (const Zone& zone : job.zones) job.pour.placing_sequence.push_back(zone.name);
  return job;
}

}  // namespace slabtide::test
