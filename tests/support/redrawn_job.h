#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "slabtide/core/geometry.h"

// The same job written down another way: what no plan may depend on.

namespace slabtide::test {

/// Every point of the job file ("[1, 2]") somewhere else, in the file's own unit.
std::string with_points(const std::string& toml, const std::function<Point(Point)>& moved);

/// The tables [[zone]] in the reverse order; the order of placing must be said.
std::string zones_reversed(const std::string& toml);

/// The names of the zones, in the order of their tables.
std::vector<std::string> names_of(const std::string& toml);

/// With the order of the tables said as the order of placing, where the job says none.
std::string with_zone_order(const std::string& toml);

using Renaming = std::vector<std::pair<std::string, std::string>>;  ///< from, to
std::string renamed(std::string toml, const Renaming& names);

/// Placing directions turned clockwise along with the drawing; formed faces look nowhere, and all
/// is in the shade unless nothing stands about it: the sun does not turn.
std::string turned(const std::string& toml, int quarters);
std::string ready_to_turn(const std::string& toml);

}  // namespace slabtide::test
