#pragma once

#include "slabtide/job/model/job.h"

namespace slabtide {

/// The job begun at `start`, on another day or at another hour. Zones with a time of their own keep
/// their distance from the start; covers stay at their hours of the local clock.
Job moved_to(const Job& job, UtcTime start);

}  // namespace slabtide
