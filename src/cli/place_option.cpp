#include "place_option.h"

#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/text.h"

namespace slabtide {

namespace {

constexpr double most_latitude_deg = 90.0;
constexpr double most_longitude_deg = 180.0;

}  // namespace

Option place_option() {
  return {"place", "LAT,LON", "latitude and longitude, degrees; west is negative", false};
}

std::optional<Place> read_place(std::string_view text) {
  const std::size_t comma = text.find(',');
  if (comma == std::string_view::npos) return std::nullopt;
  const auto latitude = parse_number(text.substr(0, comma));
  const auto longitude = parse_number(text.substr(comma + 1));
  if (!latitude || !longitude || std::abs(*latitude) > most_latitude_deg ||
      std::abs(*longitude) > most_longitude_deg) {
    return std::nullopt;
  }
  return Place{*latitude, *longitude};
}

std::string place_fault(std::string_view text) {
  return fmt::format("--place: got '{}', expected LAT,LON such as 44.9,-91.9", text);
}

}  // namespace slabtide
