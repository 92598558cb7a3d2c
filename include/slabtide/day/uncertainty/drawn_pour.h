#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/uncertainty/draw.h"

namespace slabtide {

/// A pour's columns with all they are solved from.
struct ColumnSet {
  SiteWeather weather;
  std::vector<MixModel> mixes;
  std::vector<CellExposure> exposures;
  std::vector<PouredColumn> columns;
  double start_s = 0.0;  ///< placing begins
};
ColumnSet columns_of(const PourRun& run);

/// These columns only, over the first `instants` of the weather.
ColumnSet thinned(const ColumnSet& set, const std::vector<std::size_t>& columns,
                  std::size_t instants);

/// When the drawn day places what is planned for `placed_s`.
double drawn_placing_s(double placed_s, double start_s, const Draw& draw);

/// The columns of a set on a drawn day, in their order, and what they met.
struct DrawnHistories {
  SiteWeather weather;
  std::vector<MixModel> mixes;  ///< as ColumnSet::mixes
  std::vector<ColumnHistory> histories;
};
DrawnHistories solve_drawn(const ColumnSet& set, const Draw& draw, const SolverSettings& settings);

/// The same where only little of each column is wanted: `visit` sees its history, its mix and
/// the weather, which are gone after the call. As `visit_columns`.
using VisitDrawn = std::function<void(std::size_t column, const ColumnHistory&, const MixModel&,
                                      const SiteWeather&)>;
void visit_drawn(const ColumnSet& set, const Draw& draw, const SolverSettings& settings,
                 const VisitDrawn& visit);

/// The whole pour on the drawn day: its loads and placings moved, every column solved anew.
PourRun run_drawn(const PourRun& run, const Draw& draw, const SolverSettings& settings);

}  // namespace slabtide
