#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace slabtide::test {

/// An outside figure and what the program computed, as a test records it.
struct SeenRow {
  std::string what;
  std::string source;
  std::string status;
  std::string unit;
  double tolerance = 0.0;
  std::string because;         ///< why the tolerance is what it is
  std::string row;             ///< names the figure within its check
  std::string figure;          ///< what the source says: "0.038", "1 to 4"
  std::optional<double> seen;  ///< what the program computed; empty if only `apart` is meaningful
  double apart = 0.0;          ///< signed; for a range the distance outside it, 0 inside
};

/// Whether the row is within its tolerance, apart from rounding errors.
bool meets(const SeenRow& row);

/// The number of decimals that show a hundredth of the tolerance, or a tenth.
int decimals_of(const SeenRow& row);

/// `apart` with that many decimals and its sign.
std::string apart_text(const SeenRow& row);

/// One line with fields separated by tabs. Error: std::invalid_argument if a text contains a tab or
/// a line break.
std::string line_of(const SeenRow& row);

/// The rows of a file of such lines, in order; none if there is no file. Error: std::runtime_error
/// if a line was not written by `line_of`.
std::vector<SeenRow> rows_in(const std::filesystem::path& file);

}  // namespace slabtide::test
