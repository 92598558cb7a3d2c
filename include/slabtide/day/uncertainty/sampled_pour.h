#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/uncertainty/sample.h"

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
double sampled_placing_s(double placed_s, double start_s, const Sample& sample);

/// The columns of a set on a drawn day: `visit` sees each one's history, its mix and the weather,
/// which are gone after the call. As `visit_columns`.
using VisitSampled = std::function<void(std::size_t column, const ColumnHistory&, const MixModel&,
                                        const SiteWeather&)>;
void visit_sampled(const ColumnSet& set, const Sample& sample, const SolverSettings& settings,
                   const VisitSampled& visit);

/// The whole pour on the drawn day: its loads and placings moved, every column solved again.
PourRun run_sampled(const PourRun& run, const Sample& sample, const SolverSettings& settings);

}  // namespace slabtide
