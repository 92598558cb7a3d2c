#include "packed_zones.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/usual_city.h"
#include "core/utf8.h"

namespace slabtide {

TimeZoneLoader load_from(std::span<const PackedZone> zones) {
  return [zones](std::string_view name) -> TimeZone::Loaded {
    const auto found = std::lower_bound(
        zones.begin(), zones.end(), name,
        [](const PackedZone& zone, std::string_view wanted) { return zone.name < wanted; });
    if (found != zones.end() && found->name == name) {
      return TimeZone::from_tzif(name, found->bytes);
    }
    std::string city = usual_city(name);
    return {std::nullopt,
            {fmt::format("there is no time zone \"{}\"", printable(name)),
             city.empty() ? "Give a name of the IANA list, such as \"America/Chicago\"" : city}};
  };
}

}  // namespace slabtide
