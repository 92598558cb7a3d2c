#pragma once

#include "slabtide/job/model/mix.h"

namespace slabtide {

/// All the bleed water a mix gives up, kg/m2 for each mm of depth.
///
/// Idealises: proportional to depth; no water goes into the base. Range: w/cm 0.3 to 0.6.
/// Symbols: B = max(0, 0.051 w/cm - 0.015) D, kg/m2, D mm.
/// Source: FHWA paving estimate. Status: from memory; entrained air x 0.6 and silica fume
/// x 0.25 are ours.
double total_bleed_kg_m2_per_mm(const Mix& mix);

/// From this share of silica fume on a mix hardly bleeds. Status: ours.
inline constexpr double hardly_bleeds_fume_fraction = 0.05;

}  // namespace slabtide
