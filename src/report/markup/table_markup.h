#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "svg.h"

// Rows of the tables on a page.

namespace slabtide {

/// The head of a table with its columns' names.
Element table_head(const std::vector<std::string>& names);

/// The first cell of a row, with its name.
Element row_head(std::string_view name);
/// The same where the name is a zone's.
Element name_head(std::string_view name);

/// A cell with markup that has already been escaped.
Element markup_cell(std::string_view markup);

}  // namespace slabtide
