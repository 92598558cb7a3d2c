#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

namespace slabtide {

/// What a plan rests on and nobody knows for sure before the pour.
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
  pace
};
inline constexpr std::size_t uncertain_input_count = 15;

/// In words: "the mix's set times".
std::string_view uncertain_input_words(UncertainInput unknown);

/// How far each is off, in standard deviations; independent of each other.
struct UncertainInputs {
  std::array<double, uncertain_input_count> z{};

  double of(UncertainInput unknown) const { return z[static_cast<std::size_t>(unknown)]; }
  double& of(UncertainInput unknown) { return z[static_cast<std::size_t>(unknown)]; }
};

/// Standard normal points that fill the space evenly, each followed by its mirror image so that
/// their middle is the plan's own day; none further out than 2.5. The same every time.
///
/// Symbols: Sobol points u in 0 to 1 through the quantile of the normal distribution cut off at
/// either end. Sources: Sobol 1967 with the directions of Joe & Kuo 2008 (Boost.Random);
/// status: published; the mirrored pairs and the cut are ours.
std::vector<UncertainInputs> even_uncertain_inputs(std::size_t count);

}  // namespace slabtide
