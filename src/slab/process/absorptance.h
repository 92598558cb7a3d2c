#pragma once

namespace slabtide {

/// Fraction of sunlight that concrete absorbs once its top has dried, computed from the fraction
/// when wet.
///
/// Idealises: water reduces the reflected light by the same ratio whatever the colour; a top that
/// has dried stays dry (no dew or rain).
/// Symbols: a_dry = 1 - min(1.82 (1 - a_wet), 0.77). Grey: 0.72 wet, 0.49 dry.
/// Source: Levinson & Akbari 2001, Effects of composition and exposure on the solar reflectance of
/// Portland cement concrete (LBNL): albedo dry 0.41 to 0.77, mean 0.59; wetting -0.23, hydration of
/// a fresh surface +0.08: 0.51 fresh and dry, 0.28 wet, a ratio of 1.82. Status: published; the
/// same ratio for other colours is ours. Range: a_wet 0.1 to 1.
double dry_absorptance(double wet_absorptance);

}  // namespace slabtide
