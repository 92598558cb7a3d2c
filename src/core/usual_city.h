#pragma once

#include <string>
#include <string_view>

// What people in the United States call their clock, where a file needs the name of a city.

namespace slabtide {

/// "CST", "Central time": what to write in its place, as advice; empty for any other name.
std::string usual_city(std::string_view name);

}  // namespace slabtide
