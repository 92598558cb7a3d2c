#include "slabtide/weather/sky/sun.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

// Meeus 1998, Astronomical Algorithms; US NOAA solar calculation. Angles in degrees, T in
// Julian centuries from J2000. Each row: constant, per T, per T².
struct Polynomial {
  double c0;
  double c1;
  double c2;

  double at(double t) const { return c0 + t * (c1 + t * c2); }
};
constexpr Polynomial mean_longitude{280.46646, 36000.76983, 0.0003032};       // 25.2
constexpr Polynomial mean_anomaly{357.52911, 35999.05029, -0.0001537};        // 25.3
constexpr Polynomial eccentricity{0.016708634, -0.000042037, -0.0000001267};  // 25.4
constexpr Polynomial centre_sin_m{1.914602, -0.004817, -0.000014};            // 25, centre
constexpr Polynomial centre_sin_2m{0.019993, -0.000101, 0.0};
constexpr double centre_sin_3m = 0.000289;
constexpr Polynomial moon_node{125.04, -1934.136, 0.0};
constexpr double aberration = -0.00569;
constexpr double nutation_longitude = -0.00478;
constexpr Polynomial mean_obliquity{23.4392911, -0.0130042, 0.0};  // 22.2
constexpr double nutation_obliquity = 0.00256;
constexpr double semi_major_axis_au = 1.000001018;  // 25.5

constexpr double seconds_per_century = 36525.0 * 86400.0;
constexpr double degrees_per_hour = 15.0;
constexpr double degrees_per_radian = 180.0 / std::numbers::pi;

// Refraction 34' on the horizon and the sun's radius of 16'. NOAA.
constexpr double rise_zenith_deg = 90.833;
constexpr double half_day_s = 12.0 * seconds_per_hour;
constexpr double time_tolerance_s = 0.5;

double radians(double deg) { return deg / degrees_per_radian; }

/// The sun's position among the stars, and the difference between sundial and clock.
struct Ephemeris {
  double declination_rad;
  double equation_of_time_deg;
  double distance_au;
};

/// The sun's apparent ecliptic position, and its true anomaly for the distance.
struct Ecliptic {
  double apparent_longitude_rad;
  double true_anomaly_rad;
};

Ecliptic ecliptic(double t) {
  const double m = radians(mean_anomaly.at(t));
  const double centre_deg = centre_sin_m.at(t) * std::sin(m) +
                            centre_sin_2m.at(t) * std::sin(2.0 * m) +
                            centre_sin_3m * std::sin(3.0 * m);
  const double node_rad = radians(moon_node.at(t));
  return {.apparent_longitude_rad = radians(mean_longitude.at(t) + centre_deg + aberration +
                                            nutation_longitude * std::sin(node_rad)),
          .true_anomaly_rad = m + radians(centre_deg)};
}

/// Smart's series, Meeus 28.3. Degrees by which the sundial is ahead of the clock.
double equation_of_time_deg(double t, double obliquity_rad) {
  const double e = eccentricity.at(t);
  const double m = radians(mean_anomaly.at(t));
  const double l = radians(mean_longitude.at(t));
  const double y = std::pow(std::tan(obliquity_rad / 2.0), 2.0);
  return degrees_per_radian *
         (y * std::sin(2.0 * l) - 2.0 * e * std::sin(m) +
          4.0 * e * y * std::sin(m) * std::cos(2.0 * l) - y * y / 2.0 * std::sin(4.0 * l) -
          5.0 / 4.0 * e * e * std::sin(2.0 * m));
}

Ephemeris ephemeris(UtcTime time) {
  static const UtcTime j2000(Date(2000, 1, 1), boost::posix_time::hours(12));
  const double t = seconds_between(j2000, time) / seconds_per_century;
  const Ecliptic sun = ecliptic(t);
  const double obliquity_rad =
      radians(mean_obliquity.at(t) + nutation_obliquity * std::cos(radians(moon_node.at(t))));
  const double e = eccentricity.at(t);
  return {
      .declination_rad = std::asin(std::sin(obliquity_rad) * std::sin(sun.apparent_longitude_rad)),
      .equation_of_time_deg = equation_of_time_deg(t, obliquity_rad),
      .distance_au =
          semi_major_axis_au * (1.0 - e * e) / (1.0 + e * std::cos(sun.true_anomaly_rad))};  // 25.5
}

/// Degrees past solar noon, -180 to 180.
double hour_angle_deg(UtcTime time, double equation_deg, double longitude_deg) {
  const double utc_h =
      static_cast<double>(time.time_of_day().total_milliseconds()) / 1000.0 / seconds_per_hour;
  const double angle = utc_h * degrees_per_hour - 180.0 + equation_deg + longitude_deg;
  return std::remainder(angle, 360.0);
}

void require_place(UtcTime time, double latitude_deg, double longitude_deg) {
  if (time.is_special()) throw std::invalid_argument("sun: the time is not an instant");
  if (!(std::abs(latitude_deg) <= 90.0))
    throw std::invalid_argument("sun: the latitude is not within -90 to 90");
  if (!(std::abs(longitude_deg) <= 360.0))
    throw std::invalid_argument("sun: the longitude is not within -360 to 360");
}

/// The sun's course over one place, by the second of a day.
class Course {
 public:
  Course(UtcTime origin, double latitude_deg, double longitude_deg)
      : origin_(origin), latitude_deg_(latitude_deg), longitude_deg_(longitude_deg) {}

  UtcTime time(double s) const { return after_seconds(origin_, s); }

  bool up(double s) const {
    return sun_position(time(s), latitude_deg_, longitude_deg_).zenith_deg < rise_zenith_deg;
  }

  /// Seconds to the solar noon nearest to `s`.
  double noon_near(double s) const {
    const UtcTime at = time(s);
    const double angle = hour_angle_deg(at, ephemeris(at).equation_of_time_deg, longitude_deg_);
    return s - angle / degrees_per_hour * seconds_per_hour;
  }

  /// The instant between `down_s` and `up_s` at which the upper limb is on the horizon.
  UtcTime crossing(double down_s, double up_s) const {
    while (std::abs(up_s - down_s) > time_tolerance_s) {
      const double middle_s = (down_s + up_s) / 2.0;
      (up(middle_s) ? up_s : down_s) = middle_s;
    }
    return time(up_s);
  }

 private:
  UtcTime origin_;
  double latitude_deg_;
  double longitude_deg_;
};

}  // namespace

SunPosition sun_position(UtcTime time, double latitude_deg, double longitude_deg) {
  require_place(time, latitude_deg, longitude_deg);
  const Ephemeris sun = ephemeris(time);
  const double h = radians(hour_angle_deg(time, sun.equation_of_time_deg, longitude_deg));
  const double lat = radians(latitude_deg);
  // The direction of the sun from the place: west, south, up. (Meeus 13.5 and 13.6 as one vector,
  // which is exact near the zenith, where an arc cosine is not.)
  const double west = std::cos(sun.declination_rad) * std::sin(h);
  const double south = std::cos(sun.declination_rad) * std::cos(h) * std::sin(lat) -
                       std::sin(sun.declination_rad) * std::cos(lat);
  const double up = std::sin(lat) * std::sin(sun.declination_rad) +
                    std::cos(lat) * std::cos(sun.declination_rad) * std::cos(h);
  return {.zenith_deg = degrees_per_radian * std::atan2(std::hypot(west, south), up),
          .azimuth_deg = 180.0 + degrees_per_radian * std::atan2(west, south),
          .distance_au = sun.distance_au};
}

SunTimes sun_times_about(UtcTime time, double latitude_deg, double longitude_deg) {
  require_place(time, latitude_deg, longitude_deg);
  const Course sun(time, latitude_deg, longitude_deg);
  const double noon_s = sun.noon_near(0.0);
  const double before_s = noon_s - half_day_s;
  const double after_s = noon_s + half_day_s;
  if (!sun.up(noon_s)) return {SunTimes::Kind::never_up, sun.time(noon_s), sun.time(noon_s)};
  if (sun.up(before_s) || sun.up(after_s))
    return {SunTimes::Kind::always_up, sun.time(before_s), sun.time(after_s)};
  return {SunTimes::Kind::ordinary, sun.crossing(before_s, noon_s), sun.crossing(after_s, noon_s)};
}

SunTimes sun_times(Date date, const TimeZone& zone, double latitude_deg, double longitude_deg) {
  const LocalTime civil_noon(date, boost::posix_time::hours(12));
  return sun_times_about(zone.utc_from_local(civil_noon).utc, latitude_deg, longitude_deg);
}

}  // namespace slabtide
