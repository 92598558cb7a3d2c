#include "read_site.h"

#include <string>
#include <utility>

#include "job/checks/site_clock.h"
#include "job/model/limits.h"
#include "job/toml/job_words.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr auto wind_settings =
    std::to_array<Word<WindSetting>>({{"open lot", WindSetting::open_lot},
                                      {"yard", WindSetting::yard},
                                      {"sheltered court", WindSetting::sheltered_court}});

bool read_time_zone(TableReader& table, const TimeZoneLoader& load_time_zone, Site& site) {
  const auto name = table.text("time_zone", Presence::required);
  if (!name) return false;
  auto loaded = load_time_zone(*name);
  if (loaded.zone) {
    site.time_zone = *loaded.zone;
  } else {
    table.error("time_zone", loaded.error.message, loaded.error.next_step);
  }
  return loaded.zone.has_value();
}

void warn_of_wrong_sign(TableReader& table, const Site& site) {
  if (std::string fault = clock_off_sun(site); !fault.empty()) {
    table.warning("longitude", std::move(fault), std::string(west_is_negative));
  }
}

}  // namespace

Site read_site(TableReader& table, const TimeZoneLoader& load_time_zone) {
  Site site;
  set(site.name, table.text("name"));
  set(site.latitude_deg,
      table.angle("latitude", limits::latitudes_deg, "degrees, north positive", "NS"));
  const auto longitude =
      table.angle("longitude", limits::longitudes_deg, "degrees, east positive", "EW");
  set(site.longitude_deg, longitude);
  set(site.elevation_m, table.quantity("elevation", length_quantity, limits::elevations_m));
  if (read_time_zone(table, load_time_zone, site) && longitude) warn_of_wrong_sign(table, site);
  set(site.wind_setting, table.word("wind_setting", wind_settings));
  site.measured_wind_ratio =
      table.number("measured_wind_ratio", limits::wind_ratios, "times the wind at 10 m");
  site.ground_c = table.quantity("ground_temperature", temperature_quantity, limits::ground_c);
  return site;
}

}  // namespace slabtide
