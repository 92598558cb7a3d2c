#pragma once

#include "slabtide/job/model/mix.h"

namespace slabtide {

/// Total bleed water of a mix, kg/m2 per mm of depth.
///
/// Idealises: proportional to depth; what goes into the base is `bleed_up_fraction`'s matter
/// (materials.h). Range: w/cm 0.3 to 0.6.
/// Symbols: B = max(0, 0.051 w/cm - 0.015) D, kg/m2, D mm.
/// Source: FHWA paving estimate. Status: from memory; entrained air x 0.6 and silica fume
/// x 0.25 are ours.
double total_bleed_kg_m2_per_mm(const Mix& mix);

/// From this fraction of silica fume on, a mix hardly bleeds. Status: ours.
inline constexpr double hardly_bleeds_fume_fraction = 0.05;

/// How long a slab takes to settle at 20 °C: 18 h per m of thickness.
///
/// Idealises: the time is the same for every mix; the rate falls linearly from its initial value,
/// so that an initial rate Q lasts for 2B/Q.
/// Source: usual mixes bleed 0.5 to 1.5 kg/m2/h at first (ACI 305 and Powers, from memory); 0.9
/// with the 0.8 kg/m2 of a 4 in slab of w/cm 0.45 gives 1.8 h. Kosmatka 1994, Bleeding (ASTM STP
/// 169C): thicker slabs bleed for longer (from memory). Status: ours, based on these.
double settling_time_h(double thickness_m);

}  // namespace slabtide
