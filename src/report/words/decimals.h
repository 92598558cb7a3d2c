#pragma once

namespace slabtide {

// Figures of the JSON, with as many decimals as mean something. Never -0.

/// A resistance, psi.
double tenths(double value);
/// A rate, a temperature, an amount.
double hundredths(double value);
/// A length in m, to the millimetre.
double thousandths(double value);

}  // namespace slabtide
