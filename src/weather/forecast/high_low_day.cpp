#include "slabtide/weather/forecast/high_low_day.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <stdexcept>
#include <vector>

#include "high_low_curve.h"
#include "job/checks/validate.h"
#include "job/model/limits.h"
#include "slabtide/core/units.h"
#include "slabtide/weather/air/moist_air.h"
#include "slabtide/weather/sky/sun.h"

namespace slabtide {
namespace {

constexpr double day_h = 24.0;

// Where the sun hardly rises or hardly sets, the sine and the night still need a length [ours].
constexpr double shortest_day_h = 4.0;
constexpr double longest_day_h = 22.0;

// Wind over the day [ours].
constexpr double night_wind_fraction = 0.6;
constexpr double windiest_past_noon_h = 2.5;
constexpr double shortest_breeze_h = 12.0;
constexpr double longest_breeze_h = 16.0;
constexpr double half_sine_mean = 2.0 / std::numbers::pi;

// Local clock hours at which the cloud fractions change.
constexpr double morning_from_h = 6.0;
constexpr double afternoon_from_h = 12.0;
constexpr double evening_from_h = 17.0;
constexpr double night_from_h = 21.0;

// Days before and after the pour's day that the rows reach into.
constexpr int days_before = 2;
constexpr int days_after = 4;
constexpr int rows_days_after = 3;

/// Sunrise and sunset in hours from the origin of the rows, with the day's length limited.
struct SunDay {
  double rise_h;
  double set_h;

  double length_h() const { return set_h - rise_h; }
  double noon_h() const { return (rise_h + set_h) / 2.0; }
};

double hours_between(UtcTime from, UtcTime to) {
  return seconds_between(from, to) / seconds_per_hour;
}

UtcTime after_hours(UtcTime from, double hours) {
  return after_seconds(from, hours * seconds_per_hour);
}

SunDay sun_day(const SunTimes& times, UtcTime origin) {
  const SunDay seen{hours_between(origin, times.rise), hours_between(origin, times.set)};
  const double half_h = std::clamp(seen.length_h(), shortest_day_h, longest_day_h) / 2.0;
  return {seen.noon_h() - half_h, seen.noon_h() + half_h};
}

/// The sun of the pour's day and the days around it, by solar noons. By the calendar a day could be
/// missed or counted twice where the zone's midnight is near solar noon.
std::vector<SunDay> sun_days(const Site& site, Date pour_date, UtcTime origin) {
  const SunDay pour_day =
      sun_day(sun_times(pour_date, site.time_zone, site.latitude_deg, site.longitude_deg), origin);
  std::vector<SunDay> days;
  for (int k = -days_before; k <= days_after + 1; ++k) {
    const UtcTime noon = after_hours(origin, pour_day.noon_h() + day_h * k);
    days.push_back(sun_day(sun_times_about(noon, site.latitude_deg, site.longitude_deg), origin));
  }
  return days;
}

double typed_dew_point_c(const TypedWeather& weather) {
  if (weather.dew_point_c) return *weather.dew_point_c;
  if (!weather.humidity_at_high) return weather.low_c;
  return dew_point_from_humidity_c(weather.high_c, *weather.humidity_at_high);
}

double cloud_fraction(const CloudShares& cloud, LocalTime local) {
  const double hour = static_cast<double>(local.time_of_day().total_seconds()) / seconds_per_hour;
  if (hour < morning_from_h || hour >= night_from_h) return cloud.night;
  if (hour < afternoon_from_h) return cloud.morning;
  return hour < evening_from_h ? cloud.afternoon : cloud.evening;
}

/// Wind over the daily mean, at an hour of the day `sun`.
double wind_fraction(const SunDay& sun, double hour) {
  const double breeze_h = std::clamp(sun.length_h(), shortest_breeze_h, longest_breeze_h);
  const double phase = (hour - sun.noon_h() - windiest_past_noon_h) / breeze_h + 0.5;
  if (phase <= 0.0 || phase >= 1.0) return night_wind_fraction;
  const double amplitude = (1.0 - night_wind_fraction) * day_h / (breeze_h * half_sine_mean);
  return night_wind_fraction + amplitude * std::sin(std::numbers::pi * phase);
}

/// Every day that the rows reach into, as high_low_air_c needs it.
class Days {
 public:
  Days(const TypedWeather& weather, const Site& site, Date pour_date, UtcTime origin)
      : suns_(sun_days(site, pour_date, origin)) {
    for (std::size_t i = 0; i + 1 < suns_.size(); ++i)
      spans_.push_back(span(weather, static_cast<int>(i) - days_before, suns_[i], suns_[i + 1]));
  }

  const std::vector<HighLowSpan>& spans() const { return spans_; }

  double air_c(double hour) const {
    const auto holds = [&](const HighLowSpan& s) { return hour < low_hour(s.next_rise_h); };
    return high_low_air_c(*std::find_if(spans_.begin(), spans_.end(), holds), hour);
  }

  double wind_fraction_at(double hour) const {
    const auto nearer = [&](const SunDay& a, const SunDay& b) {
      return std::abs(a.noon_h() - hour) < std::abs(b.noon_h() - hour);
    };
    return wind_fraction(*std::min_element(suns_.begin(), suns_.end(), nearer), hour);
  }

 private:
  /// The day `k` days after the pour's.
  static HighLowSpan span(const TypedWeather& weather, int k, const SunDay& sun,
                          const SunDay& next) {
    const double later_low_c = weather.next_low_c.value_or(weather.low_c);
    const double later_high_c = weather.next_high_c.value_or(weather.high_c);
    return {.rise_h = sun.rise_h,
            .set_h = sun.set_h,
            .next_rise_h = next.rise_h,
            .low_c = k > 0 ? later_low_c : weather.low_c,
            .high_c = k > 0 ? later_high_c : weather.high_c,
            .next_low_c = k >= 0 ? later_low_c : weather.low_c};
  }

  std::vector<SunDay> suns_;
  std::vector<HighLowSpan> spans_;
};

/// Whole hours plus the time of each low and high, to the second; increasing, without duplicates.
std::vector<UtcTime> row_times(const Days& days, UtcTime origin, UtcTime end) {
  std::vector<UtcTime> times;
  for (UtcTime at = origin; at <= end; at += boost::posix_time::hours(1)) times.push_back(at);
  for (const HighLowSpan& span : days.spans()) {
    for (const double hour : {low_hour(span.rise_h), high_hour(span)}) {
      const UtcTime at = after_hours(origin, hour);
      if (at > origin && at < end && high_hour(span) < span.set_h) times.push_back(at);
    }
  }
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

}  // namespace

Forecast high_low_forecast(const TypedWeather& weather, const Site& site, Date pour_date) {
  validate(weather);
  validate(site);
  if (pour_date.is_special() || !limits::years.holds(static_cast<double>(pour_date.year()))) {
    throw std::invalid_argument("pour.date: is not a date of the years that are planned");
  }
  const auto midnight = [&](Date date) {
    return site.time_zone.utc_from_local(LocalTime(date, boost::posix_time::hours(0))).utc;
  };
  const UtcTime origin = midnight(pour_date - boost::gregorian::days(1));
  const UtcTime end = midnight(pour_date) + boost::posix_time::hours(24 * rows_days_after);
  const Days days(weather, site, pour_date, origin);
  const double dew_point_c = typed_dew_point_c(weather);
  Forecast forecast;
  forecast.source = "typed high and low";
  for (const UtcTime at : row_times(days, origin, end)) {
    const double hour = hours_between(origin, at);
    ForecastHour row;
    row.at = at;
    row.air_c = days.air_c(hour);
    row.dew_point_c = std::min(dew_point_c, *row.air_c);
    row.wind_10m_m_s = weather.wind_10m_m_s * days.wind_fraction_at(hour);
    row.cloud_fraction = cloud_fraction(weather.cloud, site.time_zone.local_from_utc(at));
    forecast.hours.push_back(row);
  }
  return forecast;
}

}  // namespace slabtide
