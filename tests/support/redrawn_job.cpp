#include "support/redrawn_job.h"

#include <algorithm>
#include <array>
#include <regex>
#include <string_view>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace slabtide::test {

namespace {

/// Where the next table begins that does not belong to the zone.
std::size_t end_of_zone(const std::string& toml, std::size_t from) {
  std::size_t end = toml.size();
  for (const std::string_view next :
       {"\n[[zone]]", "\n[[obstacle]]", "\n[[option]]", "\n[practice"}) {
    end = std::min(end, toml.find(next, from));
  }
  return end;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos;
       at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

/// Replaces each match of the pattern by the result of `made`.
std::string each_replaced(const std::string& text, const std::regex& pattern,
                          const std::function<std::string(const std::smatch&)>& made) {
  std::string out;
  auto from = text.begin();
  for (std::sregex_iterator match(text.begin(), text.end(), pattern), last; match != last;
       ++match) {
    out.append(from, (*match)[0].first);
    out += made(*match);
    from = (*match)[0].second;
  }
  out.append(from, text.end());
  return out;
}

/// Degrees clockwise from north, for the directions that `random_zones` writes.
double degrees_of(const std::string& direction) {
  constexpr std::array<std::string_view, 4> words{"\"north\"", "\"east\"", "\"south\"", "\"west\""};
  const auto found = std::find(words.begin(), words.end(), direction);
  if (found != words.end()) return 90.0 * static_cast<double>(found - words.begin());
  return direction == "\"southwest\"" ? 225.0 : std::stod(direction);
}

}  // namespace

std::string with_points(const std::string& toml, const std::function<Point(Point)>& moved) {
  static const std::regex point(
      R"(\[(-?[0-9.]+(?:e[-+]?[0-9]+)?), (-?[0-9.]+(?:e[-+]?[0-9]+)?)\])");
  return each_replaced(toml, point, [&](const std::smatch& match) {
    const Point to = moved({std::stod(match[1]), std::stod(match[2])});
    return fmt::format("[{}, {}]", to.x_m, to.y_m);
  });
}

std::string zones_reversed(const std::string& toml) {
  std::size_t at = toml.find("\n[[zone]]");
  if (at == std::string::npos) return toml;
  const std::string before = toml.substr(0, at);
  std::string zones;
  while (toml.compare(at, 9, "\n[[zone]]") == 0) {
    const std::size_t end = end_of_zone(toml, at + 1);
    zones = toml.substr(at, end - at) + "\n" + zones;
    at = end;
  }
  return before + zones + toml.substr(at);
}

std::vector<std::string> names_of(const std::string& toml) {
  std::vector<std::string> names;
  static const std::regex name("\n\\[\\[zone\\]\\]\nname = (\"(?:[^\"\\\\]|\\\\.)*\")");
  for (std::sregex_iterator match(toml.begin(), toml.end(), name), last; match != last; ++match) {
    names.push_back((*match)[1]);
  }
  return names;
}

std::string with_zone_order(const std::string& toml) {
  if (toml.find("\nzone_order = ") < toml.find("\n[weather]")) return toml;
  return replaced(toml, "\n[pour]\n",
                  fmt::format("\n[pour]\nzone_order = [{}]\n", fmt::join(names_of(toml), ", ")));
}

std::string renamed(std::string toml, const Renaming& names) {
  for (const auto& [from, to] : names) toml = replaced(toml, from, fmt::format("\"{}\"", to));
  return toml;
}

std::string ready_to_turn(const std::string& toml) {
  static const std::regex facing("\nfacing = [^\n]*");
  std::string text = std::regex_replace(toml, facing, "");
  if (text.find("[[obstacle]]") == std::string::npos) return text;
  static const std::regex shaded("\nshaded = [^\n]*");
  return replaced(std::regex_replace(text, shaded, ""), "\n[[zone]]\n",
                  "\n[[zone]]\nshaded = true\n");
}

std::string turned(const std::string& toml, int quarters) {
  static const std::regex toward("\nplaced_toward = ([^\n]*)");
  const std::string text = each_replaced(toml, toward, [&](const std::smatch& match) {
    constexpr double turn_deg = 360.0;
    double to_deg = degrees_of(match[1]) + 90.0 * quarters;
    if (to_deg >= turn_deg) to_deg -= turn_deg;
    return fmt::format("\nplaced_toward = {}", to_deg);
  });
  return with_points(text, [quarters](Point p) {
    for (int i = 0; i < quarters; ++i) p = {p.y_m, -p.x_m};
    return p;
  });
}

}  // namespace slabtide::test
