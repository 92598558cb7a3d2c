#include "slabtide/day/uncertainty/sampled_pour.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "slab/column/column_modes.h"
#include "slab/column/column_solver.h"
#include "slab/process/setting.h"

namespace slabtide {

namespace {

/// What all columns of a set share on the sampled day.
struct SampledSurroundings {
  SiteWeather weather;
  std::vector<MixModel> mixes;
  std::vector<CellExposure> exposures;
};

SampledSurroundings sample_surroundings(const ColumnSet& set, const Sample& sample) {
  SampledSurroundings drawn;
  drawn.weather = with_errors(set.weather, sample.weather);
  for (const MixModel& mix : set.mixes) drawn.mixes.push_back(with_errors(mix, sample.mix));
  for (const CellExposure& exposure : set.exposures) {
    drawn.exposures.push_back(relit(exposure, set.weather, drawn.weather));
  }
  return drawn;
}

/// The ground with its top warmer by so much, the less the deeper: as a day's wave of warmth in
/// damp gravel, which falls to 1/e in 0.15 m (ours).
std::vector<GroundPoint> warmed(std::vector<GroundPoint> ground, double ground_c, double by_k) {
  constexpr double wave_depth_m = 0.15;
  if (by_k == 0.0) return ground;
  if (ground.empty()) {
    for (const double depth_m : {0.0, 0.05, 0.1, 0.2, 0.4, 0.6})
      ground.push_back({depth_m, ground_c});
  }
  for (GroundPoint& point : ground)
    point.temperature_c += by_k * std::exp(-point.depth_m / wave_depth_m);
  return ground;
}

/// A load that comes late was batched late, because the drive takes as long as planned. One that
/// comes after the forecast ends is computed over its last step, in which nothing happens to it.
ColumnCase sample_column(const PouredColumn& poured, const SampledSurroundings& drawn,
                         double start_s, const Sample& sample) {
  ColumnCase column = poured.column;
  const double transit_s = column.placed_s - column.batched_s;
  const TimeGrid& grid = drawn.weather.grid;
  column.placed_s = std::min(sampled_placing_s(column.placed_s, start_s, sample),
                             std::max(0.0, grid.end_s() - grid.step_s));
  column.batched_s = column.placed_s - transit_s;
  column.mix = &drawn.mixes[poured.mix];
  column.exposure = &drawn.exposures[poured.exposure];
  column.concrete_c = column.mix->discharge_c;
  if (!column.formed_face) {
    column.ground = warmed(std::move(column.ground), column.ground_c, sample.base_k);
  }
  column.convection_factor *= sample.convection_factor;
  column.evaporation_factor *= sample.evaporation_factor;
  column.bleed_time_factor *= sample.bleed_time_factor;
  column.absorptance = std::clamp(column.absorptance + sample.absorptance_offset, 0.0, 1.0);
  if (column.curing_compound_from_set_age_h >= 0.0) {
    column.curing_compound_from_set_age_h = initial_set_age_h(column.mix->setting);
  }
  if (column.curing_cover_from_set_age_h >= 0.0) {
    column.curing_cover_from_set_age_h = final_set_age_h(column.mix->setting);
  }
  return column;
}

std::vector<ColumnCase> sample_columns(const ColumnSet& set, const SampledSurroundings& drawn,
                                       const Sample& sample) {
  std::vector<ColumnCase> cases;
  cases.reserve(set.columns.size());
  for (const PouredColumn& column : set.columns) {
    cases.push_back(sample_column(column, drawn, set.start_s, sample));
  }
  return cases;
}

std::vector<ColumnHistory> solve(const ColumnSet& set, const SampledSurroundings& drawn,
                                 const Sample& sample, const SolverSettings& settings) {
  return solve_columns(sample_columns(set, drawn, sample), drawn.weather, settings);
}

std::shared_ptr<const SharedModes> modes_of(const ColumnSet& set) {
  auto modes = std::make_shared<SharedModes>();
  for (const PouredColumn& poured : set.columns) {
    ColumnCase column = poured.column;
    column.mix = &set.mixes[poured.mix];
    modes->add(column, SolverSettings{});
  }
  return modes;
}

/// Moves the order's times to the sampled day.
class OrderMover {
 public:
  OrderMover(const PourRun& run, double start_s, const Sample& sample)
      : run_(run), start_s_(start_s), sample_(sample) {}

  void move(OrderPlan& order) const {
    for (Load& load : order.loads) {
      for (UtcTime* at : {&load.batched, &load.arrives, &load.starts, &load.empty}) move(*at);
      for (LoadShare& fraction : load.fractions) {
        move(fraction.start);
        move(fraction.end);
      }
    }
    for (ZonePlacing& placing : order.placings) move(placing);
  }

  void move(ZonePlacing& placing) const {
    move(placing.start);
    move(placing.end);
  }

 private:
  void move(UtcTime& at) const {
    const double planned_s = seconds_between(run_.weather.grid.start, at);
    at = run_.at(sampled_placing_s(planned_s, start_s_, sample_));
  }

  const PourRun& run_;
  double start_s_;
  const Sample& sample_;
};

}  // namespace

ColumnSet columns_of(const PourRun& run) {
  ColumnSet set{run.weather, run.mixes, run.exposures, run.columns, 0.0, nullptr};
  const auto first = std::min_element(run.columns.begin(), run.columns.end(),
                                      [](const PouredColumn& a, const PouredColumn& b) {
                                        return a.column.placed_s < b.column.placed_s;
                                      });
  if (first != run.columns.end()) set.start_s = first->column.placed_s;
  return set;
}

ColumnSet thinned(const ColumnSet& set, const std::vector<std::size_t>& columns,
                  std::size_t instants) {
  ColumnSet thin;
  thin.weather = first_instants(set.weather, instants);
  thin.mixes = set.mixes;
  thin.start_s = set.start_s;
  std::map<std::size_t, std::size_t> kept;
  for (const std::size_t index : columns) {
    PouredColumn column = set.columns[index];
    const auto [exposure, is_new] = kept.try_emplace(column.exposure, thin.exposures.size());
    if (is_new) thin.exposures.push_back(first_instants(set.exposures[column.exposure], instants));
    column.exposure = exposure->second;
    thin.columns.push_back(std::move(column));
  }
  thin.modes = modes_of(thin);
  return thin;
}

double sampled_placing_s(double placed_s, double start_s, const Sample& sample) {
  return std::max(0.0, start_s + sample.delay_s + sample.pace_factor * (placed_s - start_s));
}

void visit_sampled(const ColumnSet& set, const Sample& sample, const SolverSettings& settings,
                   const VisitSampled& visit) {
  const SampledSurroundings drawn = sample_surroundings(set, sample);
  visit_columns(
      sample_columns(set, drawn, sample), drawn.weather, settings,
      [&](std::size_t i, const ColumnSolution& solution) {
        visit(i, solution.history, drawn.mixes[set.columns[i].mix], drawn.weather);
      },
      set.modes.get());
}

PourRun run_sampled(const PourRun& run, const Sample& sample, const SolverSettings& settings) {
  const ColumnSet set = columns_of(run);
  SampledSurroundings drawn = sample_surroundings(set, sample);
  PourRun result = run;
  result.histories = solve(set, drawn, sample, settings);
  const OrderMover mover(run, set.start_s, sample);
  mover.move(result.order);
  for (ZoneRun& zone : result.zones) {
    mover.move(zone.placing);
    for (CellRun& cell : zone.cells) {
      cell.placed_s = sampled_placing_s(cell.placed_s, set.start_s, sample);
    }
  }
  for (std::size_t i = 0; i < set.columns.size(); ++i) {
    const ColumnCase moved = sample_column(set.columns[i], drawn, set.start_s, sample);
    result.columns[i].column = moved;
    result.columns[i].column.mix = nullptr;
    result.columns[i].column.exposure = nullptr;
  }
  result.weather = std::move(drawn.weather);
  result.mixes = std::move(drawn.mixes);
  result.exposures = std::move(drawn.exposures);
  return result;
}

}  // namespace slabtide
