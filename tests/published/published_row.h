#pragma once

#include <string>
#include <string_view>

// Checks against the world outside. Each asserts, and writes down what it saw: the table in
// tests/published/README.md is made of that (table_test.cpp).

namespace slabtide::test {

/// What a set of figures from outside says about, where it is from and how sure that is.
/// `status` is "published", "from memory", "common practice, no source", "independent program"
/// or "ours".
struct Published {
  std::string_view what;
  std::string_view source;
  std::string_view status = "published";
  double tolerance = 0.0;
  std::string_view unit = {};
  bool as_given = false;  ///< the tolerance is half the last digit of the figures
};

/// Fails where `computed` is more than the tolerance away from the figure.
void check_row(const Published& table, const std::string& row, double figure, double computed);

/// Fails where `computed` lies further outside [least, most] than the tolerance. An end at
/// infinity is open.
void check_range(const Published& table, const std::string& row, double least, double most,
                 double computed);

/// Fails where the largest of many disagreements is more than the tolerance; `against` tells
/// with how many figures.
void check_worst(const Published& table, const std::string& row, const std::string& against,
                 double worst);

}  // namespace slabtide::test
