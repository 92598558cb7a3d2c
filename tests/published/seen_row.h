#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace slabtide::test {

/// One figure from outside and what the program made of it, as a test writes it down.
struct SeenRow {
  std::string what;
  std::string source;
  std::string status;
  std::string unit;
  double tolerance = 0.0;
  std::string because;         ///< why the tolerance is that
  std::string row;             ///< names the figure within its check
  std::string figure;          ///< what the source says: "0.038", "1 to 4"
  std::optional<double> seen;  ///< what the program says; empty where only `apart` has a meaning
  double apart = 0.0;          ///< signed; outside a range, 0 within
};

/// Is it within its tolerance, but for the rounding of the machine?
bool meets(const SeenRow& row);

/// As many as show a hundredth of the tolerance, or a tenth.
int decimals_of(const SeenRow& row);

/// Its `apart` with that many decimals and its sign.
std::string apart_text(const SeenRow& row);

/// One line, fields parted by tabs.
/// Error: std::invalid_argument where a text has a tab or an end of line.
std::string line_of(const SeenRow& row);

/// The rows of a file of such lines, in its order; none where there is no file.
/// Error: std::runtime_error where a line is not one of `line_of`.
std::vector<SeenRow> rows_in(const std::filesystem::path& file);

}  // namespace slabtide::test
