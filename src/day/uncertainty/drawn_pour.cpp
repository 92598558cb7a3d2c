#include "slabtide/day/uncertainty/drawn_pour.h"

#include <algorithm>
#include <map>

#include "slabtide/slab/column/column_solver.h"
#include "slabtide/slab/process/setting.h"

namespace slabtide {

namespace {

/// What all columns of a set share on the drawn day.
struct DrawnSurroundings {
  SiteWeather weather;
  std::vector<MixModel> mixes;
  std::vector<CellExposure> exposures;
};

DrawnSurroundings draw_surroundings(const ColumnSet& set, const Draw& draw) {
  DrawnSurroundings drawn;
  drawn.weather = with_errors(set.weather, draw.weather);
  for (const MixModel& mix : set.mixes) drawn.mixes.push_back(with_errors(mix, draw.mix));
  for (const CellExposure& exposure : set.exposures) {
    drawn.exposures.push_back(relit(exposure, set.weather, drawn.weather));
  }
  return drawn;
}

/// A load that comes late was batched late: the truck's way takes as long as planned.
ColumnCase draw_column(const PouredColumn& poured, const DrawnSurroundings& drawn, double start_s,
                       const Draw& draw) {
  ColumnCase column = poured.column;
  const double transit_s = column.placed_s - column.batched_s;
  column.placed_s = drawn_placing_s(column.placed_s, start_s, draw);
  column.batched_s = column.placed_s - transit_s;
  column.mix = &drawn.mixes[poured.mix];
  column.exposure = &drawn.exposures[poured.exposure];
  column.concrete_c = column.mix->discharge_c;
  column.convection_factor *= draw.convection_factor;
  column.evaporation_factor *= draw.evaporation_factor;
  column.absorptance = std::clamp(column.absorptance + draw.absorptance_offset, 0.0, 1.0);
  if (column.film_from_set_age_h >= 0.0) {
    column.film_from_set_age_h = initial_set_age_h(column.mix->setting);
  }
  return column;
}

std::vector<ColumnCase> draw_columns(const ColumnSet& set, const DrawnSurroundings& drawn,
                                     const Draw& draw) {
  std::vector<ColumnCase> cases;
  cases.reserve(set.columns.size());
  for (const PouredColumn& column : set.columns) {
    cases.push_back(draw_column(column, drawn, set.start_s, draw));
  }
  return cases;
}

std::vector<ColumnHistory> solve(const ColumnSet& set, const DrawnSurroundings& drawn,
                                 const Draw& draw, const SolverSettings& settings) {
  return solve_columns(draw_columns(set, drawn, draw), drawn.weather, settings);
}

/// Moves the order's hours to the drawn day.
class OrderMover {
 public:
  OrderMover(const PourRun& run, double start_s, const Draw& draw)
      : run_(run), start_s_(start_s), draw_(draw) {}

  void move(OrderPlan& order) const {
    for (Load& load : order.loads) {
      for (UtcTime* at : {&load.batched, &load.arrives, &load.starts, &load.empty}) move(*at);
      for (LoadShare& share : load.shares) {
        move(share.start);
        move(share.end);
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
    at = run_.at(drawn_placing_s(planned_s, start_s_, draw_));
  }

  const PourRun& run_;
  double start_s_;
  const Draw& draw_;
};

}  // namespace

ColumnSet columns_of(const PourRun& run) {
  ColumnSet set{run.weather, run.mixes, run.exposures, run.columns, 0.0};
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
  return thin;
}

double drawn_placing_s(double placed_s, double start_s, const Draw& draw) {
  return std::max(0.0, start_s + draw.delay_s + draw.pace_factor * (placed_s - start_s));
}

DrawnHistories solve_drawn(const ColumnSet& set, const Draw& draw, const SolverSettings& settings) {
  DrawnSurroundings drawn = draw_surroundings(set, draw);
  std::vector<ColumnHistory> histories = solve(set, drawn, draw, settings);
  return {std::move(drawn.weather), std::move(drawn.mixes), std::move(histories)};
}

void visit_drawn(const ColumnSet& set, const Draw& draw, const SolverSettings& settings,
                 const VisitDrawn& visit) {
  const DrawnSurroundings drawn = draw_surroundings(set, draw);
  visit_columns(draw_columns(set, drawn, draw), drawn.weather, settings,
                [&](std::size_t i, const ColumnHistory& history) {
                  visit(i, history, drawn.mixes[set.columns[i].mix], drawn.weather);
                });
}

PourRun run_drawn(const PourRun& run, const Draw& draw, const SolverSettings& settings) {
  const ColumnSet set = columns_of(run);
  DrawnSurroundings drawn = draw_surroundings(set, draw);
  PourRun result = run;
  result.histories = solve(set, drawn, draw, settings);
  const OrderMover mover(run, set.start_s, draw);
  mover.move(result.order);
  for (ZoneRun& zone : result.zones) {
    mover.move(zone.placing);
    for (CellRun& cell : zone.cells) {
      cell.placed_s = drawn_placing_s(cell.placed_s, set.start_s, draw);
    }
  }
  for (std::size_t i = 0; i < set.columns.size(); ++i) {
    const ColumnCase moved = draw_column(set.columns[i], drawn, set.start_s, draw);
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
