#include "slabtide/day/pour/pour_run.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>
#include <utility>

#include "bare_base.h"
#include "exposure_table.h"
#include "job/geometry/zone_geometry.h"
#include "job/model/covers.h"
#include "load_dose.h"
#include "pour_memo.h"
#include "pour_span.h"
#include "slab/column/column_solver.h"
#include "slab/material/materials.h"
#include "slab/mix/mix_model.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Half the depth of a step's tread behind its face; beyond it the temperature is taken as uniform
/// (ours).
constexpr double behind_face_m = 0.15;

/// R-3, the least of insulated blankets (labels have about 3 to 7); what lies on for sure is a
/// cover with an `r_value` (ours).
constexpr double usual_blanket_m2k_w = m2k_w_from_r_us(3.0);

double absorptance_of(const Zone& zone, const Absorptances& table) {
  if (zone.absorptance) return *zone.absorptance;
  switch (zone.colour) {
    case Colour::grey:
      return table.grey;
    case Colour::white:
      return table.white;
    case Colour::red_or_tan:
      return table.red_or_tan;
    case Colour::brown_or_charcoal:
      return table.brown_or_charcoal;
  }
  return table.grey;
}

std::vector<CoverSpan> cover_spans(const Zone& zone, const Job& job, const TimeGrid& grid) {
  std::vector<CoverSpan> spans;
  for (const Cover& cover : covers_on(zone, job.pour)) {
    spans.push_back({seconds_between(grid.start, cover.from), seconds_between(grid.start, cover.to),
                     cover.resistance_m2k_w, true});
  }
  return spans;
}

/// The fraction of the zone that has been placed when placing reaches the point.
double placed_fraction_near(const ZoneRun& run, Point at) {
  return nearest_cell(run, at).cell.placed_fraction;
}

/// Collects the columns of a pour; returns the same index for equal columns.
class PourBatch {
 public:
  PourBatch(const Job& job, const WeatherSeries& series, const PourRun& run, PourMemo& memo)
      : exposures(run.weather, memo.light),
        bases(job, series, run.order, run.weather.grid.start, run.ground_c, memo) {}

  /// What else a column depends on: the zone (or its faces) and the mix.
  using Group = std::pair<std::size_t, std::size_t>;

  std::size_t add_column(Group group, std::size_t exposure, ColumnCase column) {
    const auto key = std::make_tuple(group, exposure, column.placed_s, column.batched_s);
    const auto [found, is_new] = index_of_.try_emplace(key, columns_.size());
    if (is_new) columns_.push_back({std::move(column), group.second, exposure});
    return found->second;
  }

  /// Adds exposures, columns and their histories to the run, which already has its mixes.
  void solve_into(PourRun& run, const SolverSettings& settings) {
    run.exposures = exposures.take();
    run.columns = std::move(columns_);
    bases.solve(settings);
    for (std::size_t i = 0; i < run.columns.size(); ++i) {
      run.columns[i].column.ground = bases.under(i);
    }
    std::vector<ColumnCase> cases;
    for (const PouredColumn& poured : run.columns) {
      cases.push_back(poured.column);
      cases.back().mix = &run.mixes[poured.mix];
      cases.back().exposure = &run.exposures[poured.exposure];
    }
    run.histories = solve_columns(cases, run.weather, settings);
  }

  ExposureTable exposures;
  BareBases bases;

 private:
  std::vector<PouredColumn> columns_;
  std::map<std::tuple<Group, std::size_t, double, double>, std::size_t> index_of_;
};

/// Makes the cells and faces of a zone, each with the concrete that reaches it.
class ZoneColumns {
 public:
  ZoneColumns(const Job& job, const Practice& practice, PourRun& run, std::size_t zone,
              const std::vector<std::size_t>& mix_of_load, PourBatch& batch)
      : job_(job),
        practice_(practice),
        run_(run),
        index_(zone),
        zone_(job.zones[zone]),
        zone_run_(run.zones[zone]),
        mix_of_load_(mix_of_load),
        batch_(batch) {
    zone_run_.placing = run.order.placings[zone];
    common_.ground_c = run.ground_c;
    common_.thickness_m = zone_.thickness_m;
    if (zone_.base.depth_m > 0.0) {
      common_.below = {{zone_.base.depth_m, base_material(zone_.base.kind)}};
    }
    common_.bleed_up_fraction = bleed_up_fraction(zone_.base);
    common_.absorptance = absorptance_of(zone_, practice.absorptance);
    common_.covers = cover_spans(zone_, job, run.weather.grid);
  }

  /// `exposures`: of the cells, as ExposureTable has them.
  void add_cells(const std::vector<Cell>& cells, const std::vector<std::size_t>& exposures) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const Cell& cell = cells[i];
      CellRun cell_run;
      ColumnCase column = common_;
      cell_run.mix = fit(column, cell.placed_fraction);
      cell_run.placed_s = column.placed_s;
      cell_run.exposure = exposures[i];
      cell_run.history =
          batch_.add_column({2 * index_, cell_run.mix}, cell_run.exposure, std::move(column));
      batch_.bases.lay_under(cell_run.history, cell_run.placed_s, zone_, cell_run.exposure,
                             cell.centre);
      cell_run.cell = cell;
      zone_run_.cells.push_back(cell_run);
    }
    zone_run_.mix = zone_run_.cells.front().mix;
  }

  void add_faces() {
    for (const FormedFace& face : zone_.faces) {
      const Point at = face.at.value_or(centroid(zone_.outline));
      ColumnCase column = common_;
      column.formed_face = true;
      column.thickness_m = behind_face_m;
      column.below.clear();
      column.covers.clear();
      column.absorptance = practice_.absorptance.form;
      const std::size_t mix = fit(column, placed_fraction_near(zone_run_, at));
      FaceRun face_run;
      face_run.exposure = batch_.exposures.of_face(face, at);
      face_run.history =
          batch_.add_column({2 * index_ + 1, mix}, face_run.exposure, std::move(column));
      zone_run_.faces.push_back(face_run);
    }
  }

 private:
  /// Gives the column the concrete placed at this fraction of the zone; returns its mix.
  std::size_t fit(ColumnCase& column, double fraction) const {
    const TimeGrid& grid = run_.weather.grid;
    const PlacedFrom from = placed_from(run_.order, index_, fraction);
    const double exact_s = seconds_between(grid.start, from.placed);
    constexpr double rounding = 1e-6;  // a time halfway between two is always rounded up
    column.placed_s = std::floor(exact_s / placing_round_s + 0.5 + rounding) * placing_round_s;
    column.batched_s = seconds_between(grid.start, run_.order.loads[from.load].batched);
    const std::size_t mix = mix_of_load_[from.load];
    column.concrete_c = run_.mixes[mix].discharge_c;
    if (!column.formed_face) cure(column, run_.mixes[mix].setting);
    return mix;
  }

  /// A film once it has set initially; plastic or blankets as the crew lays them, at final set,
  /// unless the job lays covers by the hour. An evaporation film from placing to initial set.
  void cure(ColumnCase& column, const SettingParameters& setting) const {
    if (job_.pour.curing == CuringKind::film) {
      column.curing_compound_from_set_age_h = setting.initial_set_h + setting.shift_h;
    } else if (const auto cover = curing_cover(zone_, job_.pour)) {
      column.curing_cover_from_set_age_h = setting.final_set_h + setting.shift_h;
      column.curing_cover_m2k_w = *cover == CuringKind::blanket
                                      ? job_.pour.curing_blanket_m2k_w.value_or(usual_blanket_m2k_w)
                                      : 0.0;
    }
    if (job_.pour.evaporation_film) {
      column.evaporation_film_to_set_age_h = setting.initial_set_h + setting.shift_h;
    }
  }

  const Job& job_;
  const Practice& practice_;
  PourRun& run_;
  std::size_t index_;
  const Zone& zone_;
  ZoneRun& zone_run_;
  const std::vector<std::size_t>& mix_of_load_;
  PourBatch& batch_;
  ColumnCase common_;  // what the zone's columns have in common
};

/// The job's mixes without duplicates, and which of them a zone gets from a load.
class MixTable {
 public:
  explicit MixTable(const Job& job) : job_(job) {}

  /// One entry per load.
  std::vector<std::size_t> of_loads(const Zone& zone, const std::vector<Load>& loads) {
    std::vector<std::size_t> mixes;
    for (const Load& load : loads) {
      mixes.push_back(index_of(admixtures_of(job_, load, zone)));
    }
    return mixes;
  }

  std::vector<MixModel> take_models() { return std::move(models_); }

 private:
  std::size_t index_of(const std::vector<Admixture>& admixtures) {
    const auto found = std::find(known_.begin(), known_.end(), admixtures);
    if (found != known_.end()) return static_cast<std::size_t>(found - known_.begin());
    known_.push_back(admixtures);
    models_.push_back(mix_model(job_.mix, admixtures));
    return known_.size() - 1;
  }

  const Job& job_;
  std::vector<std::vector<Admixture>> known_;
  std::vector<MixModel> models_;
};

void solve_zones(PourRun& run, const Job& job, const WeatherSeries& series,
                 const Practice& practice, const SolverSettings& settings, double cell_m,
                 PourMemo& memo) {
  MixTable table(job);
  std::vector<std::vector<std::size_t>> mix_of_load;
  for (const Zone& zone : job.zones) mix_of_load.push_back(table.of_loads(zone, run.order.loads));
  run.mixes = table.take_models();
  run.zones.resize(job.zones.size());
  PourBatch batch(job, series, run, memo);
  std::vector<std::vector<Cell>> cells;
  for (const Zone& zone : job.zones) cells.push_back(cut_into_cells(zone, cell_m));
  const auto exposures = batch.exposures.of_cells(job.zones, cells, settings.threads);
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    run.zones[i].cell_m = cell_m;
    ZoneColumns columns(job, practice, run, i, mix_of_load[i], batch);
    columns.add_cells(cells[i], exposures[i]);
    columns.add_faces();
  }
  batch.solve_into(run, settings);
}

}  // namespace

Parsed<PourRun> run_pour(const Job& job, const WeatherSeries& series, const Practice& practice,
                         const SolverSettings& settings, const PourScope& scope) {
  validate(practice);
  PourRun run;
  run.order = plan_order(job, practice.placing);  // throws if the job cannot be planned
  const PlacingSpan span = placing_span(run.order);
  if (auto fault = span_fault(job, span, series)) return {std::nullopt, {std::move(*fault)}};
  const TimeGrid grid = grid_for(job, span, series.last(), horizon_h);
  run.weather = site_weather(job.site, series, grid);
  run.ground_c = ground_temperature_c(job, series);
  run.forecast_cut_short = is_cut_short(grid, horizon_h);
  const double cell_m = cell_size_for(job, scope.most_cells);
  PourMemo own(job.obstacles, SiteLight::Keep::sky);
  const bool shared = scope.memo != nullptr && scope.memo->light.obstacles() == job.obstacles;
  solve_zones(run, job, series, practice, settings, cell_m, shared ? *scope.memo : own);
  return {std::move(run), {}};
}

const CellRun& nearest_cell(const ZoneRun& zone, Point place) {
  constexpr double hair_m = 1e-6;
  const auto away_m = [place](const CellRun& run) {
    return std::hypot(run.cell.centre.x_m - place.x_m, run.cell.centre.y_m - place.y_m);
  };
  const CellRun* nearest = &zone.cells.front();
  double nearest_m = away_m(*nearest);
  for (const CellRun& cell : zone.cells) {
    // Most lie further off by one coordinate alone.
    if (std::abs(cell.cell.centre.x_m - place.x_m) > nearest_m) continue;
    const double cell_m = away_m(cell);
    if (!(cell_m < nearest_m - hair_m)) continue;
    nearest = &cell;
    nearest_m = cell_m;
  }
  return *nearest;
}

}  // namespace slabtide
