#include "working_time.h"

#include <algorithm>
#include <cmath>

#include "slabtide/core/units.h"

namespace slabtide {

UtcTime next_working_time(UtcTime at, const Job& job, const WorkHours& hours) {
  using boost::gregorian::days;
  const TimeZone& zone = job.site.time_zone;
  const auto time_of_day = [](double h) {
    return boost::posix_time::minutes(std::lround(h * minutes_per_hour));
  };
  const LocalTime local = zone.local_from_utc(at);
  const bool too_late = local.time_of_day() > time_of_day(hours.next_day_until_h);
  const Date day = std::max(local.date() + days(too_late ? 1 : 0), job.pour.date + days(1));
  return std::max(at, zone.utc_from_local(LocalTime(day, time_of_day(hours.next_day_from_h))).utc);
}

bool is_in_working_hours(UtcTime at, const Job& job, const WorkHours& hours) {
  const auto of_day = job.site.time_zone.local_from_utc(at).time_of_day();
  const double h = static_cast<double>(of_day.total_seconds()) / seconds_per_hour;
  return h >= hours.next_day_from_h && h <= hours.next_day_until_h;
}

}  // namespace slabtide
