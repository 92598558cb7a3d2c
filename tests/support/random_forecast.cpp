#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "support/random_job.h"
#include "support/random_zone.h"

namespace slabtide::test {

namespace {

/// A forecast's day in °F and mph.
struct Day {
  double mean_f;
  double swing_f;
  double spread_f;  ///< air temperature minus dew point
  double wind_mph;
  double cloud;
  bool si;
};

std::string row(ByteSource& bytes, const Day& day, const std::string& time, int hour) {
  constexpr std::size_t one_gap_in = 100;
  constexpr std::size_t one_shower_in = 12;
  const double turn = 2.0 * std::numbers::pi * (hour - 15.0) / 24.0;
  const double air_f = day.mean_f + day.swing_f * std::sin(turn);
  const double dew_f = std::min(air_f, 100.0) - day.spread_f * (0.5 + 0.5 * bytes.fraction());
  const double mph = std::max(0.0, day.wind_mph * (0.5 + bytes.fraction()));
  const double rain_mm = bytes.one_in(one_shower_in) ? bytes.between(0.0, 30.0) : 0.0;
  const auto field = [&](double value) {
    return bytes.one_in(one_gap_in) ? std::string() : fmt::format("{:.1f}", value);
  };
  return fmt::format("{},{},{},{},{},{:.1f},{}\n", time,
                     field(day.si ? celsius_from_fahrenheit(air_f) : air_f),
                     field(day.si ? celsius_from_fahrenheit(dew_f) : dew_f),
                     field(day.si ? m_s_from_mph(mph) : mph),
                     field(std::clamp(day.cloud + 40.0 * (bytes.fraction() - 0.5), 0.0, 100.0)),
                     rain_mm, bytes.one_in(one_shower_in) ? "yes" : "no");
}

}  // namespace

std::string random_forecast_csv(ByteSource& bytes, const std::string& date) {
  const Day day{bytes.between(20.0, 105.0), bytes.between(0.0, 20.0),  bytes.between(0.0, 30.0),
                bytes.between(0.0, 30.0),   bytes.between(0.0, 100.0), bytes.below(2) == 1};
  constexpr std::array<int, 4> steps_h{1, 1, 1, 3};
  const int step = bytes.one_of(steps_h);
  const int first = bytes.one_in(8) ? 12 : -24;
  const int last = bytes.one_in(8) ? 30 : 84;
  std::string text;
  if (bytes.one_in(2)) {
    text += fmt::format("# issued: {}Z\n", dated(date, -1, random_clock(bytes, 0.0, 24.0)));
  }
  text += day.si ? "time,air_c,dew_point_c,wind_m_s,cloud_percent,rain_mm,thunder\n"
                 : "time,air_f,dew_point_f,wind_mph,cloud_percent,rain_mm,thunder\n";
  for (int hour = first; hour <= last; hour += step) {
    const int of_day = (hour % 24 + 24) % 24;
    const std::string clock = fmt::format("{:02}:00", of_day);
    text += row(bytes, day, dated(date, (hour - of_day) / 24, clock) + "Z", hour);
  }
  return text;
}

}  // namespace slabtide::test
