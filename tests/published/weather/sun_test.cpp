#include "slabtide/weather/sky/sun.h"

#include <doctest/doctest.h>

#include "published/published_row.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_sun {

TEST_CASE("the sun's position of the worked example of Reda & Andreas") {
  // The source states the uncertainty of its algorithm: 0.0003°.
  // 2003-10-17 19:30:30 UTC, 39.742476 N, 105.1786 W; true zenith (elevation 39.872046 without
  // refraction) and azimuth.
  constexpr double stated_deg = 0.0003;
  constexpr const char* worked_example = "Reda & Andreas 2004, as carried in pvlib's tests";
  const UtcTime time(Date(2003, 10, 17), boost::posix_time::time_duration(19, 30, 30));
  const SunPosition sun = sun_position(time, 39.742476, -105.1786);
  check_row({.what = "sun's zenith, worked example",
             .source = worked_example,
             .tolerance = stated_deg,
             .unit = "°",
             .because = "stated by the source"},
            "17 October 2003", 50.127954, sun.zenith_deg);
  check_row({.what = "sun's azimuth, worked example",
             .source = worked_example,
             .tolerance = stated_deg,
             .unit = "°",
             .because = "stated by the source"},
            "17 October 2003", 194.340241, sun.azimuth_deg);
}

}  // namespace published_sun
