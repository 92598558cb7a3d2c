#pragma once

#include "slabtide/job/model/mix.h"
#include "slabtide/slab/material/mix_parameters.h"

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

/// Share of the bleed water that has come by a set age: 1 - (1 - s/0.75)^2 until s = 0.75,
/// then all; s = set age over set age at initial set.
/// Status: ours; fast at first, over before initial set (FHWA-RD-02-099, published: bleeding
/// is over by initial set). What comes before placing is stirred back in on the truck.
double bleed_fraction(double set_age_h, const SettingParameters& setting);

}  // namespace slabtide
