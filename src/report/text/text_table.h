#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace slabtide {

/// A column of a text table.
struct TextColumn {
  std::string heading;
  bool right = false;  ///< its cells end, not begin, at one place
  /// Columns with a number are left out where the table is wider than the terminal, the highest
  /// first; 0 stays.
  int drop = 0;
  std::string means = {};  ///< what the heading stands for, where that wants words
};

/// A table, and what stands in it.
struct FittedTable {
  std::string text;
  std::vector<std::vector<std::string>> rows;  ///< cells of the columns that are not left out
  std::string legend;  ///< "late: minutes in all. done: ...", of these columns
};

/// A table with columns as wide as their cells, indented by two, a line for each row and one for
/// the headings. Where it is wider than `width` terminal columns it leaves out what `drop` says,
/// and then cuts the widest column. Error: std::invalid_argument if a row has another number of
/// cells.
FittedTable fitted_table(std::vector<TextColumn> columns,
                         std::vector<std::vector<std::string>> rows, std::size_t width);
/// The text of such a table, or empty where it is wider than `width` even without what may be left
/// out: no cell is cut.
std::optional<std::string> uncut_table(std::vector<TextColumn> columns,
                                       std::vector<std::vector<std::string>> rows,
                                       std::size_t width);
/// Its text alone.
std::string text_table(std::vector<TextColumn> columns, std::vector<std::vector<std::string>> rows,
                       std::size_t width);

}  // namespace slabtide
