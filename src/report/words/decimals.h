#pragma once

#include <string>

namespace slabtide {

// Figures with as many decimals as mean something. Never -0.

/// A resistance, psi.
double tenths(double value);
/// A rate, a temperature, an amount.
double hundredths(double value);
/// A length in m, to the millimetre.
double thousandths(double value);

/// A figure in words with so many decimals, rounded as the JSON's: halves away from zero.
std::string fixed_words(double value, int decimals = 0);

}  // namespace slabtide
