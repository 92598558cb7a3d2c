#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

namespace slabtide {

/// Inputs of a plan that nobody knows for sure before the pour.
enum class UncertainInput {
  air,
  dew_point,
  wind,
  cloud,
  concrete,
  convection,
  evaporation,
  absorptance,
  set_time,
  set_span,
  activation_energy,
  admixture,
  bleed,
  delay,
  pace,
  night_air,
  wind_ratio,
  strength,
  saw_strength,
  aggregate,
  stress,
  ready,
  too_stiff,
  base,
  bleed_time
};
inline constexpr std::size_t uncertain_input_count = 25;

/// In words: "the mix's set times".
std::string_view uncertain_input_words(UncertainInput unknown);

/// How far each input is off, in standard deviations; independent of each other.
struct UncertainInputs {
  std::array<double, uncertain_input_count> z{};

  double of(UncertainInput unknown) const { return z[static_cast<std::size_t>(unknown)]; }
  double& of(UncertainInput unknown) { return z[static_cast<std::size_t>(unknown)]; }
};

/// Standard normal points that fill the space evenly, each followed by its mirror image so that
/// their mean is the planned day; none further out than 2.5. The same every time.
///
/// Symbols: Sobol points u from 0 to 1, mapped by the quantile function of the normal distribution
/// truncated at both ends. Sources: Sobol 1967 with the directions of Joe & Kuo 2008
/// (Boost.Random); status: published; the mirrored pairs and the truncation are ours.
std::vector<UncertainInputs> even_uncertain_inputs(std::size_t count);

}  // namespace slabtide
