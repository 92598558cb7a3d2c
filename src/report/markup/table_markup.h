#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "svg.h"

// Rows of a page's tables.

namespace slabtide {

/// The head of a table: its columns' names.
Element table_head(const std::vector<std::string>& names);

/// The name of a row, its first cell.
Element row_head(std::string_view name);

/// A cell that holds markup, escaped when it was made.
Element markup_cell(std::string_view markup);

}  // namespace slabtide
