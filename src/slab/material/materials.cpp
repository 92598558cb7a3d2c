#include "materials.h"

#include <stdexcept>

namespace slabtide {
namespace {

constexpr ThermalMaterial gravel{.conductivity_w_mk = 1.4, .heat_capacity_j_m3k = 1.9e6};  // damp
constexpr ThermalMaterial soil{.conductivity_w_mk = 1.2, .heat_capacity_j_m3k = 2.2e6};
constexpr ThermalMaterial sand{.conductivity_w_mk = 1.3, .heat_capacity_j_m3k = 1.9e6};  // damp
constexpr ThermalMaterial insulation{.conductivity_w_mk = 0.035,
                                     .heat_capacity_j_m3k = 4.0e4};  // extruded foam board

constexpr double concrete_heat_capacity_j_m3k = 2350.0 * 1050.0;  // from memory
constexpr double concrete_w_mk = 2.0;                             // from memory
constexpr double limestone_concrete_w_mk = 2.2;                   // from memory
constexpr double siliceous_concrete_w_mk = 2.6;                   // from memory

double concrete_conductivity_w_mk(Aggregate aggregate) {
  switch (aggregate) {
    case Aggregate::limestone:
      return limestone_concrete_w_mk;
    case Aggregate::gravel:
    case Aggregate::quartzite:
    case Aggregate::sandstone:
      return siliceous_concrete_w_mk;
    case Aggregate::unknown:
    case Aggregate::granite:
    case Aggregate::basalt:
      return concrete_w_mk;
  }
  throw std::invalid_argument("concrete: unknown aggregate");
}

double expansion_per_f(Aggregate aggregate) {
  switch (aggregate) {
    case Aggregate::quartzite:
      return 6.6e-6;
    case Aggregate::sandstone:
      return 6.5e-6;
    case Aggregate::gravel:
      return 6.0e-6;
    case Aggregate::granite:
      return 5.3e-6;
    case Aggregate::basalt:
      return 4.8e-6;
    case Aggregate::limestone:
      return 3.8e-6;
    case Aggregate::unknown:
      return 5.5e-6;
  }
  throw std::invalid_argument("expansion: unknown aggregate");
}

BareSurface damp_surface(BaseKind kind) {
  switch (kind) {
    case BaseKind::gravel:
      return {.absorptance = 0.75, .wetness = 0.1};
    case BaseKind::soil:
      return {.absorptance = 0.80, .wetness = 0.3};
    case BaseKind::sand:
      return {.absorptance = 0.65, .wetness = 0.2};
    case BaseKind::insulation:
      return {.absorptance = 0.60, .wetness = 0.0};
  }
  throw std::invalid_argument("base: unknown kind");
}

}  // namespace

ThermalMaterial base_material(BaseKind kind) {
  switch (kind) {
    case BaseKind::gravel:
      return gravel;
    case BaseKind::soil:
      return soil;
    case BaseKind::sand:
      return sand;
    case BaseKind::insulation:
      return insulation;
  }
  throw std::invalid_argument("base: unknown kind");
}

BareSurface bare_surface(const Base& base) {
  constexpr double darker_when_wet = 0.1;
  constexpr double kept_wet = 0.9;
  BareSurface surface = damp_surface(base.depth_m > 0.0 ? base.kind : BaseKind::soil);
  if (base.plastic || base.kept == BaseKept::covered) surface.wetness = 0.0;
  if (!base.plastic && base.kept == BaseKept::wet && base.kind != BaseKind::insulation)
    return {surface.absorptance + darker_when_wet, kept_wet};
  return surface;
}

double bleed_up_fraction(const Base& base) {
  constexpr double over_gravel_or_sand = 0.8;
  constexpr double over_soil = 0.9;
  if (base.plastic || base.kind == BaseKind::insulation) return 1.0;
  const bool is_soil = base.kind == BaseKind::soil || !(base.depth_m > 0.0);
  return is_soil ? over_soil : over_gravel_or_sand;
}

ThermalMaterial soil_material() { return soil; }

ThermalMaterial concrete_material(Aggregate aggregate) {
  return {.conductivity_w_mk = concrete_conductivity_w_mk(aggregate),
          .heat_capacity_j_m3k = concrete_heat_capacity_j_m3k};
}

double expansion_per_k(Aggregate aggregate) {
  constexpr double fahrenheit_per_kelvin = 1.8;
  return expansion_per_f(aggregate) * fahrenheit_per_kelvin;
}

}  // namespace slabtide
