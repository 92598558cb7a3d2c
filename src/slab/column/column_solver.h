#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include "slabtide/slab/column/column.h"

namespace slabtide {

class SharedModes;

/// Solves a batch. Results come in the order of the cases and are the same to the bit for any
/// number of threads. Error: std::invalid_argument names the case and what is wrong.
std::vector<ColumnHistory> solve_columns(std::span<const ColumnCase> cases,
                                         const SiteWeather& weather,
                                         const SolverSettings& settings);

/// Receives a column's history with where the heat went, and its profiles where the settings keep
/// them; valid only during the call.
using VisitColumn = std::function<void(std::size_t column, const ColumnSolution& solution)>;

/// Like `solve_columns`, for many columns of which only a few numbers are needed: only a few
/// histories are held at a time. `visit` is called from several threads at once, once for each
/// column, in any order. Columns that are solved again and again bring their modes along (`known`).
void visit_columns(std::span<const ColumnCase> cases, const SiteWeather& weather,
                   const SolverSettings& settings, const VisitColumn& visit,
                   const SharedModes* known = nullptr);

}  // namespace slabtide
