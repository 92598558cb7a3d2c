#include "site_clock.h"

#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/units.h"

namespace slabtide {

std::string clock_off_sun(const Site& site) {
  constexpr double degrees_per_hour = 15.0;
  /// No country keeps its clock further from solar time; the west of China is about three hours off
  /// (our choice).
  constexpr double max_off_sun_h = 4.0;
  const UtcTime any_winter(Date(2026, 1, 1));
  const double clock_h =
      seconds_between(any_winter, site.time_zone.local_from_utc(any_winter)) / seconds_per_hour;
  const double sun_h = site.longitude_deg / degrees_per_hour;
  const double off_h = std::abs(std::remainder(clock_h - sun_h, hours_per_day));
  if (off_h <= max_off_sun_h) return {};
  return fmt::format("the clock of {} is {:.0f} h off the sun at this longitude",
                     site.time_zone.name(), off_h);
}

std::string clock_without_summer(const Site& site) {
  const std::string& name = site.time_zone.name();
  if (name != "EST" && name != "MST") return {};
  return fmt::format("{} is standard time all year, without daylight saving time", name);
}

}  // namespace slabtide
