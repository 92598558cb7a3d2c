#pragma once

#include <string>
#include <vector>

#include "slabtide/job/model/mix.h"

namespace slabtide {

/// The effect of a mix's admixtures on its setting.
struct AdmixtureShift {
  double hours = 0.0;  ///< in set age at 22.8 °C (73 °F); positive is later
  /// Where the hours come from, and any dose outside the useful or permitted range.
  std::vector<std::string> notes;
};

/// The sum of the admixtures' shifts, but not below -0.6 times `initial_set_h` (the set time
/// without admixture).
///
/// Idealises: shifts are proportional to dose, independent of cement and temperature, and add up.
/// Source: the supplier's own hours if given; else hours per dose from memory. The limits of ASTM
/// C494 (from memory) are mentioned in the notes, not enforced.
/// Error: std::invalid_argument if an admixture has neither dose nor hours, or one that is not
/// finite.
AdmixtureShift admixture_shift(const std::vector<Admixture>& admixtures, double initial_set_h);

}  // namespace slabtide
