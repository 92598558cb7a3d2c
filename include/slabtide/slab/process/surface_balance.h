#pragma once

namespace slabtide {

/// Emissivity of concrete in the longwave. Status: ours (usual range 0.90 to 0.95).
inline constexpr double surface_emissivity = 0.93;

/// What a surface meets at one instant.
struct SurfaceConditions {
  double absorbed_w_m2 = 0.0;  ///< shortwave, and longwave from sky and walls
  double air_c = 0.0;
  double vapour_pressure_pa = 0.0;
  double forced_w_m2k = 0.0;  ///< wind's part of convection
  double convection_factor = 1.0;
  /// Evaporation for each Pa of driving pressure; 0 where nothing evaporates.
  double evaporation_kg_m2_h_pa = 0.0;
};

/// What passes through the surface, and how it changes with its temperature.
struct SurfaceExchange {
  double w_m2 = 0.0;  ///< into the surface
  double slope_w_m2k = 0.0;
  double evaporation_kg_m2_h = 0.0;
};

/// Longwave that a surface takes up from the sky it sees and, over the rest of its view, from
/// walls at air temperature, W/m2: e_s s T_a^4 (F e_sky + 1 - F).
/// Status: ours (walls at air temperature), Stefan-Boltzmann published.
double absorbed_longwave_w_m2(double air_c, double sky_emissivity, double sky_view);

/// Balance of shortwave, longwave, convection and the latent heat of evaporation.
///
/// Idealises: one surface temperature; walls at air temperature; evaporation never below 0.
/// The slope is good to 2 %, which is enough for Newton's method.
/// Sources: convection.h, evaporation.h, moist_air.h.
SurfaceExchange surface_exchange(const SurfaceConditions& conditions, double surface_c);

}  // namespace slabtide
