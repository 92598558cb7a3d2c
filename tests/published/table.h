#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "published/missed_check.h"
#include "published/seen_row.h"

namespace slabtide::test {

/// The rows that one module's tests recorded.
struct ModuleRows {
  std::string_view heading;
  std::vector<SeenRow> rows;
};

/// Rows about the same thing from the same source, in order.
using Check = std::vector<SeenRow>;
std::vector<Check> checks_of(const std::vector<SeenRow>& rows);

/// Markdown: the rows that miss, according to the list; a table of the checks of each module; every
/// figure.
std::string published_table(const std::vector<ModuleRows>& modules,
                            const std::vector<MissedCheck>& list);

/// Markdown, for a contractor: a row for each check of `list`, with how many of its figures are not
/// met and by how much; the minor ones in a sentence.
std::string missed_table(const std::vector<ModuleRows>& modules,
                         const std::vector<MissedCheck>& list);

/// Whether two tables are the same. Measured figures may differ by one in the last digit, because
/// compilers round differently.
bool same_table(const std::string& one, const std::string& other);

}  // namespace slabtide::test
