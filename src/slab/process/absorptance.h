#pragma once

namespace slabtide {

/// Share of the sunlight that concrete takes up once its top has dried, from the share while wet.
///
/// Idealises: water darkens by as large a part of what is thrown back, whatever the colour; a top
/// that is dry stays so, dew and rain left out.
/// Symbols: a_dry = 1 - min(1.82 (1 - a_wet), 0.77). Grey: 0.72 wet, 0.49 dry.
/// Source: Levinson & Akbari 2001, Effects of composition and exposure on the solar reflectance of
/// Portland cement concrete (LBNL): albedo dry 0.41 to 0.77, mean 0.59; wetting -0.23, hydration of
/// a fresh surface +0.08: 0.51 fresh and dry, 0.28 wet, 1.82 times. Status: published; that other
/// colours dry by the same part is ours. Range: a_wet 0.1 to 1.
double dry_absorptance(double wet_absorptance);

}  // namespace slabtide
