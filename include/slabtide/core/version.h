#pragma once

#include <string_view>

namespace slabtide {

/// The program's version, as the build gives it: "0.1.0".
std::string_view version();

}  // namespace slabtide
