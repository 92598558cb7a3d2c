#pragma once

#include <optional>
#include <string_view>

#include "quantity.h"

// Quantities as a person writes them: 4'6", "3 1/2 in", "66 °F", "1,200 ft".

namespace slabtide {

/// A number and the unit written behind it.
struct WrittenQuantity {
  double value = 0.0;
  const Unit* unit = nullptr;  ///< of the kind's units; null if none is written
};

/// A number, with a unit of the kind behind it or without: "4 ft", "3-1/2\"", "4½ in", "66°F", and
/// of two units the sums people write, "4'6\"" and "1 h 30 min". A comma parts thousands, in files
/// in US units. Empty for anything else.
std::optional<WrittenQuantity> parse_quantity(std::string_view text, const Quantity& kind,
                                              UnitSystem system);

/// A number alone, with its fraction and commas written so.
std::optional<double> parse_written_number(std::string_view text, UnitSystem system);

}  // namespace slabtide
