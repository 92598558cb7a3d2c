#include "weather/sky/nights.h"

#include <algorithm>

#include "slabtide/weather/sky/sun.h"

namespace slabtide {

std::vector<TimeSpan> nights_between(UtcTime from, UtcTime to, const Site& site) {
  std::vector<TimeSpan> nights;
  const auto add = [&](UtcTime dark_from, UtcTime dark_to) {
    const TimeSpan night{std::max(dark_from, from), std::min(dark_to, to)};
    if (night.from < night.to) nights.push_back(night);
  };
  const boost::gregorian::days day(1);
  const Date last = site.time_zone.local_from_utc(to).date() + day;
  Date date = site.time_zone.local_from_utc(from).date() - day;
  const auto sun_on = [&site](Date any) {
    return sun_times(any, site.time_zone, site.latitude_deg, site.longitude_deg);
  };
  // Where the sun stays down, rise and set are both at its noon, so the night runs from noon to
  // noon. Where it stays up, they are half a day off, so the night has no length.
  for (SunTimes today = sun_on(date); date <= last; date += day) {
    const SunTimes tomorrow = sun_on(date + day);
    add(today.set, tomorrow.rise);
    today = tomorrow;
  }
  return nights;
}

}  // namespace slabtide
