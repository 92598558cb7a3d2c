#include "wind.h"

#include <cmath>
#include <stdexcept>

namespace slabtide {
namespace {

// Wind at 0.5 m over wind at 10 m [ours]: log-law ratios are 0.61 over smooth ground, 0.48 over
// open grass and 0.35 over tall grass; nearby buildings reduce them further.
constexpr double open_lot_ratio = 0.60;
constexpr double yard_ratio = 0.45;
constexpr double sheltered_court_ratio = 0.28;

}  // namespace

double named_wind_ratio(WindSetting setting) {
  switch (setting) {
    case WindSetting::open_lot:
      return open_lot_ratio;
    case WindSetting::yard:
      return yard_ratio;
    case WindSetting::sheltered_court:
      return sheltered_court_ratio;
  }
  throw std::invalid_argument("wind: unknown setting");
}

double wind_ratio(const Site& site) {
  if (!site.measured_wind_ratio) return named_wind_ratio(site.wind_setting);
  if (!(*site.measured_wind_ratio >= 0.0 && std::isfinite(*site.measured_wind_ratio)))
    throw std::invalid_argument("wind: the measured ratio is negative");
  return *site.measured_wind_ratio;
}

}  // namespace slabtide
