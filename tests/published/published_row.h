#pragma once

#include <string>
#include <string_view>

// Checks against the outside world. Each check asserts and records its result, from which the table
// in tests/published/README.md is made (table_test.cpp). The tolerance of a row is the accuracy of
// its source, whatever the program computes; rows that miss by more are listed in
// does_not_meet.cpp.

namespace slabtide::test {

inline constexpr std::string_view half_digit = "half the last digit";
inline constexpr std::string_view given_as_range = "a range";

/// What a set of outside figures is about, where it is from, and how certain that is.
/// `status` is "published", "from memory", "common practice, no source", "independent program"
/// or "ours".
struct Published {
  std::string_view what;
  std::string_view source;
  std::string_view status = "published";
  double tolerance = 0.0;  ///< the accuracy of the figures themselves, chosen before comparing
  std::string_view unit = {};
  std::string_view because = half_digit;  ///< why the figures are not more accurate
};

/// Each function fails if a row misses and is not listed, if it is listed and meets, and if it
/// misses by an amount other than the listed one.

/// Misses if `computed` is further from the figure than the tolerance.
void check_row(const Published& table, const std::string& row, double figure, double computed);

/// Misses if `computed` is outside [min, max] by more than the tolerance. An infinite end is open.
void check_range(const Published& table, const std::string& row, double min, double max,
                 double computed);

/// Misses if the largest of many disagreements is more than the tolerance; `against` says how many
/// figures there are.
void check_worst(const Published& table, const std::string& row, const std::string& against,
                 double worst);

}  // namespace slabtide::test
