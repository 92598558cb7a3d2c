#pragma once

#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// A span of time, such as from sunset to sunrise.
struct TimeSpan {
  UtcTime from;
  UtcTime to;
};

/// This much of the dark after sunset and before sunrise counts as day (ours: civil twilight lasts
/// about as long).
inline constexpr double twilight_s = 30.0 * 60.0;

/// The nights at a site between two instants, cut off there, in order. A day on which the sun stays
/// down is all night; one on which it stays up has none. Source: sun.h.
std::vector<TimeSpan> nights_between(UtcTime from, UtcTime to, const Site& site);

}  // namespace slabtide
