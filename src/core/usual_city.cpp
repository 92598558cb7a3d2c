#include "usual_city.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace slabtide {

namespace {

/// The zone whose clock people in the United States call so: common practice, no source.
struct UsualCity {
  std::string_view said;
  std::string_view zone;
  std::string_view besides = {};
};

constexpr std::string_view without_summer_time =
    ", or \"America/Phoenix\" in Arizona, which keeps standard time";

constexpr auto cities =
    std::to_array<UsualCity>({{"est", "America/New_York"},
                              {"edt", "America/New_York"},
                              {"et", "America/New_York"},
                              {"eastern", "America/New_York"},
                              {"cst", "America/Chicago"},
                              {"cdt", "America/Chicago"},
                              {"ct", "America/Chicago"},
                              {"central", "America/Chicago"},
                              {"mst", "America/Denver", without_summer_time},
                              {"mdt", "America/Denver"},
                              {"mt", "America/Denver", without_summer_time},
                              {"mountain", "America/Denver", without_summer_time},
                              {"pst", "America/Los_Angeles"},
                              {"pdt", "America/Los_Angeles"},
                              {"pt", "America/Los_Angeles"},
                              {"pacific", "America/Los_Angeles"},
                              {"akst", "America/Anchorage"},
                              {"akdt", "America/Anchorage"},
                              {"alaska", "America/Anchorage"},
                              {"hst", "Pacific/Honolulu"},
                              {"hawaii", "Pacific/Honolulu"}});

}  // namespace

std::string usual_city(std::string_view name) {
  std::string said(name.substr(0, name.find(' ')));  // "Central time"
  for (char& c : said) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  const auto* const found = std::find_if(
      cities.begin(), cities.end(), [&said](const UsualCity& city) { return city.said == said; });
  if (found == cities.end()) return {};
  return fmt::format("Name its city: \"{}\"{}", found->zone, found->besides);
}

}  // namespace slabtide
