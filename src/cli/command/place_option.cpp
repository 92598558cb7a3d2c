#include "place_option.h"

#include <fmt/format.h>

#include "core/text.h"
#include "core/zone_at.h"
#include "job/checks/site_clock.h"
#include "job/model/limits.h"
#include "request/download/forecast_download.h"

namespace slabtide {

Option place_option() {
  return {"place", "LAT,LON", "latitude and longitude, degrees; west is negative", false};
}

std::optional<Place> read_place(std::string_view text) {
  const std::size_t comma = text.find(',');
  if (comma == std::string_view::npos) return std::nullopt;
  const auto latitude = parse_number(text.substr(0, comma));
  const auto longitude = parse_number(text.substr(comma + 1));
  if (!latitude || !longitude || !limits::latitudes_deg.holds(*latitude) ||
      !limits::longitudes_deg.holds(*longitude)) {
    return std::nullopt;
  }
  return Place{*latitude, *longitude};
}

std::string place_fault(std::string_view text) {
  return fmt::format("--place: got '{}', expected LAT,LON such as 44.9,-91.9", text);
}

std::string sign_doubt(const Place& place) {
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
