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

/// Thermal expansion of concrete by its aggregate, 1/K. Source: Concrete Construction, coefficients
/// by aggregate; unknown 5.5e-6 per °F. Status: published.
double expansion_per_k(Aggregate aggregate);

}  // namespace slabtide
