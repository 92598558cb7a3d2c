#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/uncertainty/sample.h"

namespace slabtide {

class SharedModes;

/// A pour's columns with everything they are solved from.
struct ColumnSet {
  SiteWeather weather;
  std::vector<MixModel> mixes;
  std::vector<CellExposure> exposures;
  std::vector<PouredColumn> columns;
  double start_s = 0.0;  ///< when placing begins
  /// How the columns conduct, which is the same on any day; null if it is to be worked out.
  std::shared_ptr<const SharedModes> modes;
};
ColumnSet columns_of(const PourRun& run);

/// Only these columns, over the first `instants` of the weather, to be solved on many days.
ColumnSet thinned(const ColumnSet& set, const std::vector<std::size_t>& columns,
                  std::size_t instants);

/// When the sampled day places what is planned for `placed_s`.
double sampled_placing_s(double placed_s, double start_s, const Sample& sample);

/// Solves the columns of a set on a sampled day: `visit` receives each one's history, its mix and
/// the weather, which are valid only during the call. Otherwise as `visit_columns`.
using VisitSampled = std::function<void(std::size_t column, const ColumnHistory&, const MixModel&,
                                        const SiteWeather&)>;
void visit_sampled(const ColumnSet& set, const Sample& sample, const SolverSettings& settings,
                   const VisitSampled& visit);

/// The whole pour on a sampled day: its loads and placings are moved, and every column is solved
/// again.
PourRun run_sampled(const PourRun& run, const Sample& sample, const SolverSettings& settings);

}  // namespace slabtide
