#include "read_site.h"

#include <cmath>

#include <fmt/format.h>

#include "job_words.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr Range latitudes_deg{-90.0, 90.0};
constexpr Range longitudes_deg{-180.0, 180.0};
/// From the Dead Sea's shore to the highest towns.
constexpr Range elevations_m{-430.0, 5100.0};
/// No concrete on frozen ground; desert soil in summer.
constexpr Range ground_c{celsius_from_fahrenheit(32.0), celsius_from_fahrenheit(120.0)};

constexpr auto wind_settings =
    std::to_array<Word<WindSetting>>({{"open lot", WindSetting::open_lot},
                                      {"yard", WindSetting::yard},
                                      {"sheltered court", WindSetting::sheltered_court}});

/// No country keeps its clock further off the sun: the west of China comes to three (ours).
constexpr double most_off_sun_h = 4.0;

bool read_time_zone(TableReader& table, Site& site) {
  const auto name = table.text("time_zone", Presence::required);
  if (!name) return false;
  auto loaded = TimeZone::load(*name);
  if (loaded.zone) {
    site.time_zone = *loaded.zone;
  } else {
    table.error("time_zone", loaded.error.message, loaded.error.next_step);
  }
  return loaded.zone.has_value();
}

/// A longitude without its minus puts the sun on the other side of the day.
void warn_of_wrong_sign(TableReader& table, const Site& site) {
  constexpr double degrees_per_hour = 15.0;
  const UtcTime any_winter(Date(2026, 1, 1));
  const double clock_h =
      seconds_between(any_winter, site.time_zone.local_from_utc(any_winter)) / seconds_per_hour;
  const double sun_h = site.longitude_deg / degrees_per_hour;
  const double off_h = std::abs(std::remainder(clock_h - sun_h, hours_per_day));
  if (off_h <= most_off_sun_h) return;
  table.warning("longitude",
                fmt::format("the clock of {} is {:.0f} h off the sun at this longitude",
                            site.time_zone.name(), off_h),
                "Longitudes west of Greenwich are negative");
}

}  // namespace

Site read_site(TableReader& table) {
  Site site;
  set(site.name, table.text("name"));
  set(site.latitude_deg,
      table.number("latitude", latitudes_deg, "degrees, north positive", Presence::required));
  const auto longitude =
      table.number("longitude", longitudes_deg, "degrees, east positive", Presence::required);
  set(site.longitude_deg, longitude);
  set(site.elevation_m, table.quantity("elevation", length_quantity, elevations_m));
  if (read_time_zone(table, site) && longitude) warn_of_wrong_sign(table, site);
  set(site.wind_setting, table.word("wind_setting", wind_settings));
  site.measured_wind_ratio =
      table.number("measured_wind_ratio", wind_ratios, "times the wind at 10 m");
  site.ground_c = table.quantity("ground_temperature", temperature_quantity, ground_c);
  return site;
}

}  // namespace slabtide
