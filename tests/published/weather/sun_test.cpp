#include "slabtide/weather/sun.h"

#include <cmath>

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("the sun's position of the worked example of Reda & Andreas") {
  // Reda & Andreas 2004, Solar position algorithm for solar radiation applications, as carried
  // in pvlib's tests: 2003-10-17 19:30:30 UTC, 39.742476 N, 105.1786 W; true zenith (elevation
  // 39.872046 without refraction) and azimuth. Published.
  // Asked: 0.02 deg. Seen: zenith 0.00003, azimuth 0.0023.
  const UtcTime time(Date(2003, 10, 17), boost::posix_time::time_duration(19, 30, 30));
  const SunPosition sun = sun_position(time, 39.742476, -105.1786);
  MESSAGE("zenith off by ", sun.zenith_deg - 50.127954, " deg, azimuth by ",
          sun.azimuth_deg - 194.340241, " deg");
  CHECK(std::abs(sun.zenith_deg - 50.127954) <= 0.001);
  CHECK(std::abs(sun.azimuth_deg - 194.340241) <= 0.003);
}
