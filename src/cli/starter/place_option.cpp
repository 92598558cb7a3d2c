#include "place_option.h"

#include <fmt/format.h>

#include "core/zone_at.h"
#include "job/checks/site_clock.h"
#include "request/download/forecast_download.h"

namespace slabtide {

Option place_option() {
  return {"place", "LAT,LON",
          "latitude and longitude as a map gives them: \"44.9, -91.9\" or \"44.9° N, 91.9° W\"",
          false};
}

std::string place_fault(std::string_view text) {
  return fmt::format(
      "--place: got '{}', expected a place such as \"44.9, -91.9\" or \"44.9° N, 91.9° W\"", text);
}

std::string sign_doubt(const LatLon& place) {
  const auto [latitude_deg, longitude_deg] = place;
  if (in_nws_area(latitude_deg, longitude_deg) || !in_nws_area(latitude_deg, -longitude_deg))
    return {};
  return fmt::format("{:g},{:g} is in {} and {:g},{:g} in {}", latitude_deg, longitude_deg,
                     zone_name_at(latitude_deg, longitude_deg), latitude_deg, -longitude_deg,
                     zone_name_at(latitude_deg, -longitude_deg));
}

std::string place_warning(std::string_view command, std::string_view what) {
  return fmt::format("slabtide {}: warning: --place: {}\n  {}\n", command, what, west_is_negative);
}

}  // namespace slabtide
