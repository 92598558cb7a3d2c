#pragma once

#include <string>

namespace slabtide {

// Figures rounded to a sensible number of decimals. Never -0.

/// For a resistance, psi.
double tenths(double value);
/// For a rate, a temperature or an amount.
double hundredths(double value);
/// For a length in m, to the millimetre.
double thousandths(double value);

/// A figure with this many decimals, rounded as in the JSON: halves away from zero.
std::string fixed_words(double value, int decimals = 0);

}  // namespace slabtide
