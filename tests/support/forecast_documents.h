#pragma once

#include <string>
#include <vector>

#include "slabtide/core/civil_time.h"

// The same weather written in every format that can be read.

namespace slabtide::test {

/// What all formats can give for an hour. The hourly document of the US National Weather Service
/// gives cloud only in classes: a fraction of 0, 0.1875, 0.4375, 0.75 or 1.
struct PlainHour {
  UtcTime at;
  double air_c = 0.0;
  double dew_point_c = 0.0;
  double wind_m_s = 0.0;
  double cloud_fraction = 0.0;
  double rain_chance = 0.0;
  bool thunder = false;
};

/// Hours of an invented spring day and the following night, from midnight (UTC-5).
std::vector<PlainHour> spring_hours(Date date, std::size_t count = 48);

std::string as_csv_us(const std::vector<PlainHour>& hours);
std::string as_csv_si(const std::vector<PlainHour>& hours);
std::string as_nws_hourly(const std::vector<PlainHour>& hours);
/// Equal values of consecutive hours share an interval, as in the service's documents.
std::string as_nws_grid(const std::vector<PlainHour>& hours);
std::string as_open_meteo(const std::vector<PlainHour>& hours);

}  // namespace slabtide::test
