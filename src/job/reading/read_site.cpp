#include "read_site.h"

#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "core/usual_city.h"
#include "core/zone_at.h"
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

/// Its name, or that of the place's where the file has none.
std::optional<std::string> time_zone_name(TableReader& table, bool has_place, const Site& site) {
  auto given = table.text("time_zone", has_place ? Presence::optional : Presence::required);
  if (!has_place || table.has("time_zone")) return given;
  std::string name = zone_name_at(site.latitude_deg, site.longitude_deg);
  table.warning("time_zone", fmt::format("missing: {} is used, from the place", name),
                fmt::format("write time_zone = \"{}\", or the right one", name));
  return name;
}

bool read_time_zone(TableReader& table, const TimeZoneLoader& load_time_zone, bool has_place,
                    Site& site) {
  const auto name = time_zone_name(table, has_place, site);
  if (!name) return false;
  auto loaded = load_time_zone(*name);
  if (loaded.zone) {
    site.time_zone = *loaded.zone;
    if (std::string fault = clock_without_summer(site); !fault.empty()) {
      table.warning("time_zone", std::move(fault), usual_city(*name));
    }
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
  const auto latitude =
      table.angle("latitude", limits::latitudes_deg, "degrees, north positive", "NS");
  set(site.latitude_deg, latitude);
  const auto longitude =
      table.angle("longitude", limits::longitudes_deg, "degrees, east positive", "EW");
  set(site.longitude_deg, longitude);
  set(site.elevation_m, table.quantity("elevation", length_quantity, limits::elevations_m));
  const bool has_place = latitude && longitude;
  if (read_time_zone(table, load_time_zone, has_place, site) && longitude) {
    warn_of_wrong_sign(table, site);
  }
  set(site.wind_setting, table.word("wind_setting", wind_settings));
  site.measured_wind_ratio =
      table.number("measured_wind_ratio", limits::wind_ratios, "times the wind at 10 m");
  site.ground_c = table.quantity("ground_temperature", temperature_quantity, limits::ground_c);
  return site;
}

}  // namespace slabtide
