#include "weather/air/wind.h"

#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("a reading on site beats the named setting") {
  Site site;
  site.wind_setting = WindSetting::sheltered_court;
  CHECK(wind_ratio(site) == named_wind_ratio(WindSetting::sheltered_court));
  site.measured_wind_ratio = 0.7;
  CHECK(wind_ratio(site) == 0.7);
}

TEST_CASE("more shelter, less wind") {
  CHECK(named_wind_ratio(WindSetting::open_lot) > named_wind_ratio(WindSetting::yard));
  CHECK(named_wind_ratio(WindSetting::yard) > named_wind_ratio(WindSetting::sheltered_court));
}

TEST_CASE("wind refuses what cannot be") {
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  Site site;
  site.measured_wind_ratio = -0.1;
  CHECK_THROWS_AS(wind_ratio(site), std::invalid_argument);
  site.measured_wind_ratio = not_a_number;
  CHECK_THROWS_AS(wind_ratio(site), std::invalid_argument);
}
