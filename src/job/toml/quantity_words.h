#pragma once

#include <optional>
#include <string>
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
/// of two units the sums people write, "4'6\"" and "1 h 30 min". "4-inch" and "six inches" are
/// taken, and "80 degrees", which are those of the file. A comma parts thousands, in files in US
/// units. Empty for anything else.
std::optional<WrittenQuantity> parse_quantity(std::string_view text, const Quantity& kind,
                                              UnitSystem system);

/// A text as it was typed, with the unit it was taken for where it names none: "4'6\"", "68 °F".
std::string as_typed(std::string_view text, const WrittenQuantity& taken, const Quantity& kind,
                     UnitSystem system);

/// The unit of the kind that the word names: "F", "°F", "mph", "percent"; null if it names none.
const Unit* unit_named(std::string_view word, const Quantity& kind);

/// "degrees", "deg.": of which kind is not said.
bool is_degrees(std::string_view word);

/// A number alone, with its fraction and commas written so, or in a word: "six"; or with what it
/// counts behind it: "6-sack", "6 sack mix", "six sacks" of "sacks", "7 days". A bag is a sack, and
/// so is an sk.
std::optional<double> parse_count(std::string_view text, std::string_view noun, UnitSystem system);

/// The text of a key without what it is called at the end: "4000 psi mix", "4 in slump" of `slump`.
std::string_view without_noun(std::string_view text, std::string_view key);

/// Sacks of cement, where they are called so: "6 sack", "6-sack mix", "6 sacks a yard", "6 sk".
/// Empty for a number alone.
std::optional<double> parse_sacks(std::string_view text, UnitSystem system);

}  // namespace slabtide
