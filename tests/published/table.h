#pragma once

#include <string>
#include <string_view>
#include <vector>

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

/// Markdown: a table of the checks of each module, then every figure.
std::string published_table(const std::vector<ModuleRows>& modules);

/// A tolerance that is neither the figures' own rounding nor near the worst disagreement seen
/// among those it is allowed: one sentence each.
std::vector<std::string> slack_tolerances(const std::vector<SeenRow>& rows);

/// Are two tables the same? What is measured may differ by one in its last digit, as another
/// compiler rounds it.
bool same_table(const std::string& one, const std::string& other);

}  // namespace slabtide::test
