#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

/// One hour of the pour day as it affects the concrete.
struct OutlookHour {
  UtcTime at;
  double air_c = 0.0;
  double dew_point_c = 0.0;
  double humidity_fraction = 0.0;
  double wind_slab_m_s = 0.0;
  double shortwave_w_m2 = 0.0;  ///< on an open horizontal surface
  double cloud_fraction = 0.0;
  double rain_chance = 0.0;
  double rain_mm_h = 0.0;
  bool thunder = false;
  /// Evaporation of free water at the job's sunniest and shadiest place, from concrete at its
  /// temperature there at that time; before it is placed, from concrete at its temperature as
  /// delivered.
  double evaporation_sun_kg_m2_h = 0.0;
  double evaporation_shade_kg_m2_h = 0.0;
  /// Rate of setting there, 1 at 22.8 °C (73 °F).
  double set_rate_sun = 0.0;
  double set_rate_shade = 0.0;
};

/// The day by the hour, and whether to pour.
struct Outlook {
  std::vector<OutlookHour> hours;
  Verdict verdict = Verdict::good;
  std::vector<std::string> reasons;  ///< titles of the cautions behind the verdict
};

/// The pour day by the hour, from two hours before placing to two hours after sunset, and the
/// verdict that follows from the plan's cautions: any `stop` means think again, any `caution` means
/// care.
Outlook look_ahead(const PlannedPour& pour);

}  // namespace slabtide
