#pragma once

#include <string>
#include <vector>

#include "slabtide/job/model/mix.h"

namespace slabtide {

/// What the admixtures of a mix do to its setting.
struct AdmixtureShift {
  double hours = 0.0;  ///< of set age at 22.8 °C (73 °F); later is positive
  /// Where the hours come from, and which dose lies outside the useful or permitted range.
  std::vector<std::string> notes;
};

/// The sum of the admixtures' shifts, not below -0.6 of `initial_set_h` (the set time
/// without admixture).
///
/// Idealises: shifts are proportional to dose, independent of cement and temperature, and add.
/// Source: the supplier's own hours where given; else hours a dose from memory; limits of
/// ASTM C494 (from memory) are named in the notes, not enforced.
/// Error: std::invalid_argument where an admixture has neither dose nor hours, or not finite.
AdmixtureShift admixture_shift(const std::vector<Admixture>& admixtures, double initial_set_h);

}  // namespace slabtide
