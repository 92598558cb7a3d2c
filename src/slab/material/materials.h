#pragma once

#include "slabtide/job/model/job.h"
#include "slabtide/job/model/mix.h"
#include "slabtide/slab/material/layer.h"

namespace slabtide {

/// Conductivity and heat capacity of a base course, of the soil below it, and of concrete. Status:
/// gravel and soil from memory (Farouki 1981, Thermal properties of soils, ranges); sand slightly
/// below gravel; insulation common handbook value.
ThermalMaterial base_material(BaseKind kind);
ThermalMaterial soil_material();
ThermalMaterial concrete_material(Aggregate aggregate);

/// Of the bleed water, what comes to the top; a permeable base takes the rest, unless plastic lies
/// on it: gravel and sand a fifth, soil a tenth, insulation none.
///
/// Source: that slabs on plastic bleed more and longer, ACI 302.1R (from memory); no figures were
/// found. Status: ours.
double bleed_up_fraction(const Base& base);

/// How a bare base takes up sun and gives off water.
struct BareSurface {
  double absorptance = 0.0;
  double wetness = 0.0;  ///< share of free-water evaporation
};

/// Of a compacted base; under tarps or plastic it dries not at all.
///
/// Status: ours, amid albedos of soil 0.05 (dark, wet) to 0.40 (light, dry), sand 0.20 to 0.45 and
/// gravel about 0.25 (Oke 1987, Boundary Layer Climates; from memory); wetting darkens by 0.1. A
/// base is compacted damp and dries on top within hours, soil more slowly: 0.1 to 0.3.
BareSurface bare_surface(const Base& base);

/// Thermal expansion of concrete by its aggregate, 1/K. Source: Concrete Construction, coefficients
/// by aggregate; unknown 5.5e-6 per °F. Status: published.
double expansion_per_k(Aggregate aggregate);

}  // namespace slabtide
