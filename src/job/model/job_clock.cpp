#include "slabtide/job/model/job_clock.h"

namespace slabtide {

ClockStyle clock_style(const Job& job) {
  const bool us = job.units == UnitSystem::us;
  return {.hours = job.hours.value_or(us ? HourCount::twelve : HourCount::twenty_four),
          .month_first = us};
}

Clock clock_of(const Job& job) { return {job.site.time_zone, clock_style(job)}; }

}  // namespace slabtide
