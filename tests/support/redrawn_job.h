#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "slabtide/core/geometry.h"

// The same job written differently, in ways that must not change the plan.

namespace slabtide::test {

/// Moves every point of the job file ("[1, 2]"), in the file's own unit.
std::string with_points(const std::string& toml, const std::function<Point(Point)>& moved);

/// Reverses the order of the [[zone]] tables; the job must give its placing order.
std::string zones_reversed(const std::string& toml);

/// The names of the zones, in the order of their tables.
std::vector<std::string> names_of(const std::string& toml);

/// Adds the order of the tables as the placing order, if the job gives none.
std::string with_zone_order(const std::string& toml);

using Renaming = std::vector<std::pair<std::string, std::string>>;  ///< from, to
std::string renamed(std::string toml, const Renaming& names);

/// Turns placing directions clockwise along with the drawing. Formed faces lose their direction,
/// and unless there are no obstacles everything is in the shade, because the sun does not turn.
std::string turned(const std::string& toml, int quarters);
std::string ready_to_turn(const std::string& toml);

}  // namespace slabtide::test
