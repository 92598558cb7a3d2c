#pragma once

#include <cstddef>
#include <span>

#include "slab/column/column_batch.h"

namespace slabtide {

/// Solves up to `lanes_at_once()` columns side by side, with the widest instruction set of this
/// machine. The solution of a column does not depend on those beside it.
void solve_side_by_side(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                        std::span<ColumnSolution> solutions, ColumnWorkspace& workspace);
std::size_t lanes_at_once();

}  // namespace slabtide
