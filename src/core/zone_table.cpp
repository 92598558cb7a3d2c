#include "zone_table.h"

#include <cmath>
#include <numbers>
#include <sstream>

#include "slabtide/core/files.h"
#include "text.h"

namespace slabtide {

namespace {

constexpr double degrees_to_radians = std::numbers::pi / 180.0;

/// A place as the table writes it (ISO 6709): "+4151-08739" or "+404251-0740023".
struct TablePlace {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
};

/// One half: a sign, `degree_digits` digits of degrees, two of minutes, and optionally two of
/// seconds.
std::optional<double> degrees_of(std::string_view text, std::size_t degree_digits) {
  constexpr double minutes_per_degree = 60.0;
  constexpr double seconds_per_degree = 3600.0;
  const bool with_seconds = text.size() == 1 + degree_digits + 4;
  if (!with_seconds && text.size() != 1 + degree_digits + 2) return std::nullopt;
  const auto degrees = parse_number(text.substr(1, degree_digits));
  const auto minutes = parse_number(text.substr(1 + degree_digits, 2));
  const auto seconds = with_seconds ? parse_number(text.substr(3 + degree_digits, 2)) : 0.0;
  if (!degrees || !minutes || !seconds) return std::nullopt;
  const double size = *degrees + *minutes / minutes_per_degree + *seconds / seconds_per_degree;
  return text.front() == '-' ? -size : size;
}

std::optional<TablePlace> place_of(std::string_view text) {
  const std::size_t split = text.find_first_of("+-", 1);
  if (split == std::string_view::npos) return std::nullopt;
  constexpr std::size_t latitude_digits = 2;
  constexpr std::size_t longitude_digits = 3;
  const auto latitude = degrees_of(text.substr(0, split), latitude_digits);
  const auto longitude = degrees_of(text.substr(split), longitude_digits);
  if (!latitude || !longitude) return std::nullopt;
  return TablePlace{*latitude, *longitude};
}

/// Cosine of the angle between two places: larger is nearer.
double nearness(const TablePlace& a, double latitude_deg, double longitude_deg) {
  const double lat_a = a.latitude_deg * degrees_to_radians;
  const double lat_b = latitude_deg * degrees_to_radians;
  const double apart = (a.longitude_deg - longitude_deg) * degrees_to_radians;
  return std::sin(lat_a) * std::sin(lat_b) + std::cos(lat_a) * std::cos(lat_b) * std::cos(apart);
}

}  // namespace

std::optional<std::string> nearest_zone_name(double latitude_deg, double longitude_deg,
                                             const std::filesystem::path& zoneinfo_dir) {
  const FileText table = read_file(zoneinfo_dir / "zone1970.tab");
  if (!table.text) return std::nullopt;
  std::istringstream lines(*table.text);
  std::optional<std::string> best;
  double best_nearness = -2.0;
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream fields(line);
    std::string countries;
    std::string coordinates;
    std::string name;
    if (!(fields >> countries >> coordinates >> name)) continue;
    const auto place = place_of(coordinates);
    if (!place) continue;
    const double near = nearness(*place, latitude_deg, longitude_deg);
    if (near > best_nearness) {
      best_nearness = near;
      best = name;
    }
  }
  return best;
}

}  // namespace slabtide
