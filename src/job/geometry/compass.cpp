#include "compass.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <string>

namespace slabtide {

namespace {

struct Direction {
  std::string_view word;
  std::string_view letters;
};

/// Clockwise from north, in steps of an eighth of a turn.
constexpr std::array<Direction, 8> directions{{{"north", "n"},
                                               {"northeast", "ne"},
                                               {"east", "e"},
                                               {"southeast", "se"},
                                               {"south", "s"},
                                               {"southwest", "sw"},
                                               {"west", "w"},
                                               {"northwest", "nw"}}};

}  // namespace

std::optional<double> compass_deg(std::string_view word) {
  std::string joined(word);
  std::erase(joined, ' ');
  for (std::size_t i = 0; i < directions.size(); ++i) {
    if (joined != directions[i].word && joined != directions[i].letters) continue;
    return full_turn_deg / static_cast<double>(directions.size()) * static_cast<double>(i);
  }
  return std::nullopt;
}

std::string_view compass_word(double bearing_deg) {
  constexpr auto count = static_cast<long>(directions.size());
  const long turn = std::lround(bearing_deg * static_cast<double>(count) / full_turn_deg);
  return directions[static_cast<std::size_t>((turn % count + count) % count)].word;
}

}  // namespace slabtide
