#include "text_table.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

namespace {

constexpr std::size_t table_indent = 2;
constexpr std::size_t between_columns = 2;

using Rows = std::vector<std::vector<std::string>>;

std::vector<std::size_t> widths_of(const std::vector<TextColumn>& columns, const Rows& rows) {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    std::size_t width = display_width(printable(columns[i].heading));
    for (const auto& row : rows) width = std::max(width, display_width(printable(row[i])));
    widths.push_back(width);
  }
  return widths;
}

std::size_t total(const std::vector<std::size_t>& widths) {
  std::size_t sum = table_indent;
  for (const std::size_t width : widths) sum += width + between_columns;
  return sum - between_columns;
}

/// Leaves out the column that may be dropped first; false if there is none.
bool drop_one(std::vector<TextColumn>& columns, Rows& rows) {
  const auto first =
      std::max_element(columns.begin(), columns.end(),
                       [](const TextColumn& a, const TextColumn& b) { return a.drop < b.drop; });
  if (first == columns.end() || first->drop == 0) return false;
  const auto at = first - columns.begin();
  columns.erase(first);
  for (auto& row : rows) row.erase(row.begin() + at);
  return true;
}

std::string table_line(const std::vector<TextColumn>& columns,
                       const std::vector<std::string>& cells,
                       const std::vector<std::size_t>& widths) {
  std::string line(table_indent, ' ');
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string cell = pad(shortened(cells[i], widths[i]), widths[i]);
    const std::size_t end = cell.find_last_not_of(' ') + 1;
    line += columns[i].right ? std::string(cell.size() - end, ' ') + cell.substr(0, end) : cell;
    line.append(between_columns, ' ');
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

}  // namespace

FittedTable fitted_table(std::vector<TextColumn> columns, Rows rows, std::size_t width) {
  for (const auto& row : rows) {
    if (row.size() != columns.size()) throw std::invalid_argument("text_table: a row's cells");
  }
  std::vector<std::size_t> widths = widths_of(columns, rows);
  while (total(widths) > width && drop_one(columns, rows)) widths = widths_of(columns, rows);
  while (total(widths) > width) {
    const auto widest = std::max_element(widths.begin(), widths.end());
    if (*widest <= 1) break;
    --*widest;
  }
  FittedTable table;
  std::vector<std::string> headings;
  for (const TextColumn& column : columns) {
    headings.push_back(column.heading);
    if (column.means.empty()) continue;
    table.legend +=
        fmt::format("{}{}: {}.", table.legend.empty() ? "" : " ", column.heading, column.means);
  }
  table.text = table_line(columns, headings, widths);
  for (const auto& row : rows) table.text += table_line(columns, row, widths);
  table.rows = std::move(rows);
  return table;
}

std::optional<std::string> uncut_table(std::vector<TextColumn> columns, Rows rows,
                                       std::size_t width) {
  std::vector<std::size_t> widths = widths_of(columns, rows);
  while (total(widths) > width && drop_one(columns, rows)) widths = widths_of(columns, rows);
  if (total(widths) > width) return std::nullopt;
  return text_table(std::move(columns), std::move(rows), width);
}

std::string text_table(std::vector<TextColumn> columns, Rows rows, std::size_t width) {
  return fitted_table(std::move(columns), std::move(rows), width).text;
}

}  // namespace slabtide
