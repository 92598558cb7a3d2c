#pragma once

#include <string>
#include <string_view>

// Checks against the world outside. Each asserts, and writes down what it saw: the table in
// tests/published/README.md is made of that (table_test.cpp). A row is allowed what its source
// may be off, whatever the program makes of it; rows that miss by more stand in does_not_meet.cpp.

namespace slabtide::test {

inline constexpr std::string_view half_digit = "half the last digit";
inline constexpr std::string_view given_as_range = "a range";

/// What a set of figures from outside says about, where it is from and how sure that is.
/// `status` is "published", "from memory", "common practice, no source", "independent program"
/// or "ours".
struct Published {
  std::string_view what;
  std::string_view source;
  std::string_view status = "published";
  double tolerance = 0.0;  ///< the accuracy of the figures themselves, chosen before comparing
  std::string_view unit = {};
  std::string_view because = half_digit;  ///< why the figures are no more accurate than that
};

/// Each fails where a row misses and is not listed to, where it is listed and meets, and where it
/// misses by other than what is listed.

/// Misses where `computed` is more than the tolerance away from the figure.
void check_row(const Published& table, const std::string& row, double figure, double computed);

/// Misses where `computed` lies further outside [least, most] than the tolerance. An end at
/// infinity is open.
void check_range(const Published& table, const std::string& row, double min, double max,
                 double computed);

/// Misses where the largest of many disagreements is more than the tolerance; `against` tells
/// with how many figures.
void check_worst(const Published& table, const std::string& row, const std::string& against,
                 double worst);

}  // namespace slabtide::test
