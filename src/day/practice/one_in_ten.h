#pragma once

namespace slabtide {

/// The number of standard deviations that one in ten of a normal distribution exceeds on one side:
/// converts a spread in practice.toml to a standard deviation. Status: published tables.
inline constexpr double one_in_ten_z = 1.2815515655446004;

}  // namespace slabtide
