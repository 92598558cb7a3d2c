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

/// How long a slab settles at 20 °C: 18 h for each m of it.
///
/// Idealises: any mix takes as long; water rises fast at first and falls off in a straight line,
/// so that a rate Q at first lasts for 2B/Q.
/// Source: usual mixes bleed 0.5 to 1.5 kg/m2/h at first (ACI 305 and Powers, from memory); 0.9
/// with the 0.8 kg/m2 of a 4 in slab of w/cm 0.45 makes 1.8 h. Kosmatka 1994, Bleeding (ASTM STP
/// 169C): lasts longer in thicker slabs (from memory). Status: ours, by these.
double settling_time_h(double thickness_m);

}  // namespace slabtide
