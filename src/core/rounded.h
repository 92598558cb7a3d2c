#pragma once

namespace slabtide {

/// Rounded to so many decimals, halves away from zero; never -0, which nobody should read.
double rounded(double value, int decimals);

}  // namespace slabtide
