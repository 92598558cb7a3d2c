#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/slab/column/column.h"
#include "slabtide/slab/process/surface_balance.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// What lies on a column at one instant.
struct CoverState {
  double resistance_m2k_w = 0.0;
  bool stops_evaporation = false;

  friend bool operator==(const CoverState&, const CoverState&) = default;
};

/// The form before a vertical face: 19 mm (3/4 in) plywood, 0.13 W/mK. Status: from memory
/// (ASHRAE Fundamentals, plywood 0.12 to 0.13).
inline constexpr double form_resistance_m2k_w = 0.146;

/// Covers add; a formed face always has its form, which stops evaporation.
CoverState cover_at(const ColumnCase& column, double time_s);

/// The surface conditions of a column at an instant (seconds from the grid's start), the
/// weather taken in a straight line between the grid's instants. `wetness` is the share of
/// free-water evaporation that the surface gives.
/// Departures: a formed face uses the convection of a horizontal surface; what breathes and
/// insulates (wet fabric) evaporates from its outer face.
SurfaceConditions conditions_at(const ColumnCase& column, const SiteWeather& weather, double time_s,
                                double wetness);

}  // namespace slabtide
