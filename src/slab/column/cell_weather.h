#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/slab/column/column.h"

namespace slabtide {

/// What lies on a column at one instant.
struct CoverState {
  double resistance_m2k_w = 0.0;
  bool stops_evaporation = false;

  friend bool operator==(const CoverState&, const CoverState&) = default;
};

/// The form in front of a vertical face: 19 mm (3/4 in) plywood, 0.13 W/mK. Status: from memory
/// (ASHRAE Fundamentals, plywood 0.12 to 0.13).
inline constexpr double form_resistance_m2k_w = 0.146;

/// Solar absorptance once the top has dried; that of a form's outside does not change.
double dry_absorptance_of(const ColumnCase& column);

/// The resistances of covers add up; a formed face always has its form, which stops evaporation.
CoverState cover_at(const ColumnCase& column, double time_s);

/// How long until a cover is next laid or taken off; `forever_s` if none is.
double until_cover_changes_s(const ColumnCase& column, double time_s);

}  // namespace slabtide
