#include "nws_values.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "core/text.h"

namespace slabtide {
namespace {

constexpr double clear_fraction = 0.0;
constexpr double few_fraction = 1.5 / 8.0;
constexpr double scattered_fraction = 3.5 / 8.0;
constexpr double broken_fraction = 6.0 / 8.0;
constexpr double overcast_fraction = 1.0;

struct ShareRow {
  std::string_view name;
  double fraction;
};

/// Codes of the icons; a prefix "wind_" says nothing about the sky.
constexpr std::array<ShareRow, 5> sky_codes{{{"skc", clear_fraction},
                                             {"few", few_fraction},
                                             {"sct", scattered_fraction},
                                             {"bkn", broken_fraction},
                                             {"ovc", overcast_fraction}}};

/// The first entry that occurs in the words counts, so longer phrases come before shorter ones.
constexpr std::array<ShareRow, 11> sky_words{{{"mostly sunny", few_fraction},
                                              {"mostly clear", few_fraction},
                                              {"partly sunny", scattered_fraction},
                                              {"partly cloudy", scattered_fraction},
                                              {"mostly cloudy", broken_fraction},
                                              {"overcast", overcast_fraction},
                                              {"cloudy", overcast_fraction},
                                              {"sunny", clear_fraction},
                                              {"clear", clear_fraction},
                                              {"fair", clear_fraction},
                                              {"fog", overcast_fraction}}};

/// Prefixes of codes of weather that implies cloud. Showers leave gaps in it.
constexpr std::array<ShareRow, 11> wet_codes{{{"rain_showers", broken_fraction},
                                              {"tsra", broken_fraction},
                                              {"rain", overcast_fraction},
                                              {"snow", overcast_fraction},
                                              {"sleet", overcast_fraction},
                                              {"fzra", overcast_fraction},
                                              {"fog", overcast_fraction},
                                              {"blizzard", overcast_fraction},
                                              {"tornado", overcast_fraction},
                                              {"hurricane", overcast_fraction},
                                              {"tropical_storm", overcast_fraction}}};

struct UnitName {
  std::string_view name;
  WeatherUnit unit;
};

constexpr std::array<UnitName, 12> wmo_units{
    {{"degC", WeatherUnit::celsius},
     {"degF", WeatherUnit::fahrenheit},
     {"percent", WeatherUnit::percent},
     {"km_h-1", WeatherUnit::km_h},
     {"m_s-1", WeatherUnit::m_s},
     {"km/h", WeatherUnit::km_h},
     {"m/s", WeatherUnit::m_s},
     {"kt", WeatherUnit::knots},
     {"mm", WeatherUnit::mm},
     {"kg_m-2", WeatherUnit::mm},  // water: 1 kg/m2 is 1 mm
     {"m", WeatherUnit::metre},
     {"W_m-2", WeatherUnit::w_m2}}};

constexpr std::array<UnitName, 7> wind_units{{{"mph", WeatherUnit::mph},
                                              {"km/h", WeatherUnit::km_h},
                                              {"kph", WeatherUnit::km_h},
                                              {"m/s", WeatherUnit::m_s},
                                              {"kt", WeatherUnit::knots},
                                              {"kts", WeatherUnit::knots},
                                              {"knots", WeatherUnit::knots}}};

template <std::size_t N>
std::optional<WeatherUnit> unit_named(const std::array<UnitName, N>& names, std::string_view name) {
  const auto* const found =
      std::find_if(names.begin(), names.end(),
                   [&](const UnitName& candidate) { return candidate.name == name; });
  if (found == names.end()) return std::nullopt;
  return found->unit;
}

std::string lower_case(std::string_view text) {
  std::string result{text};
  std::transform(result.begin(), result.end(), result.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  return result;
}

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> pieces;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(separator), text.size());
    if (end > 0) pieces.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return pieces;
}

/// The codes in an icon's path: what follows /day/ or /night/, without the chances. An hour in
/// which the weather changes has two: ".../land/day/sct/rain,40?size=small".
std::vector<std::string> icon_codes(std::string_view icon) {
  std::string_view path = icon.substr(0, icon.find('?'));
  for (const std::string_view mark : {"/day/", "/night/"}) {
    const std::size_t found = path.find(mark);
    if (found == std::string_view::npos) continue;
    std::vector<std::string> codes = split(path.substr(found + mark.size()), '/');
    for (std::string& code : codes) code.resize(std::min(code.find(','), code.size()));
    return codes;
  }
  return {};
}

std::optional<double> fraction_of_sky_code(std::string_view code) {
  constexpr std::string_view windy = "wind_";
  if (code.starts_with(windy)) code.remove_prefix(windy.size());
  for (const ShareRow& row : sky_codes) {
    if (row.name == code) return row.fraction;
  }
  return std::nullopt;
}

std::optional<double> fraction_of_words(std::string_view words) {
  const std::string text = lower_case(words);
  for (const ShareRow& row : sky_words) {
    if (text.find(row.name) != std::string::npos) return row.fraction;
  }
  return std::nullopt;
}

std::optional<double> fraction_of_wet_code(std::string_view code) {
  for (const ShareRow& row : wet_codes) {
    if (code.starts_with(row.name)) return row.fraction;
  }
  return std::nullopt;
}

}  // namespace

std::optional<WeatherUnit> unit_of_wmo_code(std::string_view code) {
  const std::size_t colon = code.rfind(':');
  if (colon != std::string_view::npos) code.remove_prefix(colon + 1);
  return unit_named(wmo_units, code);
}

std::optional<Measured> wind_in_words(std::string_view text) {
  std::vector<std::string> words = split(lower_case(text), ' ');
  if (words.size() == 1 && words.front() == "calm") return Measured{0.0, WeatherUnit::m_s};
  const bool is_range = words.size() == 4 && words[1] == "to";
  if (words.size() != 2 && !is_range) return std::nullopt;
  const std::optional<double> low = parse_number(words.front());
  const std::optional<double> high = is_range ? parse_number(words[2]) : low;
  const std::optional<WeatherUnit> unit = unit_named(wind_units, words.back());
  if (!low || !high || !unit || *high < *low) return std::nullopt;
  return Measured{(*low + *high) / 2.0, *unit};
}

std::optional<double> cloud_fraction_of(const SkyTold& sky) {
  const std::vector<std::string> codes = icon_codes(sky.icon);
  for (const std::string& code : codes) {
    if (const auto fraction = fraction_of_sky_code(code)) return fraction;
  }
  if (const auto fraction = fraction_of_words(sky.words)) return fraction;
  for (const std::string& code : codes) {
    if (const auto fraction = fraction_of_wet_code(code)) return fraction;
  }
  return std::nullopt;
}

bool thunder_of(const SkyTold& sky) {
  const std::vector<std::string> codes = icon_codes(sky.icon);
  const auto is_thunder = [](const std::string& code) { return code.starts_with("tsra"); };
  const std::string words = lower_case(sky.words);
  return std::any_of(codes.begin(), codes.end(), is_thunder) ||
         words.find("thunder") != std::string::npos || words.find("t-storm") != std::string::npos;
}

}  // namespace slabtide
