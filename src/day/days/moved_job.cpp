#include "moved_job.h"

namespace slabtide {

namespace {

/// The same hour of the local clock, so many days later.
UtcTime days_later(UtcTime time, boost::gregorian::date_duration days, const TimeZone& zone) {
  const LocalTime local = zone.local_from_utc(time);
  return zone.utc_from_local(LocalTime(local.date() + days, local.time_of_day())).utc;
}

}  // namespace

Job moved_to(const Job& job, UtcTime start) {
  Job moved = job;
  const TimeZone& zone = job.site.time_zone;
  const Duration by = start - job.pour.start;
  moved.pour.start = start;
  moved.pour.date = zone.local_from_utc(start).date();
  for (Zone& each : moved.zones) {
    if (each.placed_at) *each.placed_at += by;
  }
  const auto days = moved.pour.date - job.pour.date;
  for (Cover& cover : moved.pour.covers) {
    cover.from = days_later(cover.from, days, zone);
    cover.to = days_later(cover.to, days, zone);
  }
  return moved;
}

}  // namespace slabtide
