#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "published/missed_check.h"
#include "published/seen_row.h"

namespace slabtide::test {

/// The rows that one module's tests wrote down.
struct ModuleRows {
  std::string_view heading;
  std::vector<SeenRow> rows;
};

/// Rows that say about the same thing by the same source, in their order.
using Check = std::vector<SeenRow>;
std::vector<Check> checks_of(const std::vector<SeenRow>& rows);

/// Markdown: the rows that miss, by that list; a table of the checks of each module; every figure.
std::string published_table(const std::vector<ModuleRows>& modules,
                            const std::vector<MissedCheck>& list);

/// Markdown, for a contractor: a row for each check of `list`, how many of its figures are not met
/// and by how much; the minor ones in a sentence.
std::string missed_table(const std::vector<ModuleRows>& modules,
                         const std::vector<MissedCheck>& list);

/// Are two tables the same? What is measured may differ by one in its last digit, as another
/// compiler rounds it.
bool same_table(const std::string& one, const std::string& other);

}  // namespace slabtide::test
