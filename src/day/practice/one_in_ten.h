#pragma once

namespace slabtide {

/// Standard deviations beyond which one in ten of a normal distribution lies, to one side: what
/// turns a spread of practice.toml into a deviation. Status: published tables.
inline constexpr double one_in_ten_z = 1.2815515655446004;

}  // namespace slabtide
