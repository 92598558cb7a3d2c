#include "slabtide/day/pour/pour_run.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <tuple>

#include <fmt/format.h>

#include "nearest_cell.h"
#include "slabtide/core/units.h"
#include "slabtide/job/geometry/zone_geometry.h"
#include "slabtide/slab/mix/mix_model.h"

namespace slabtide {

namespace {

constexpr double grid_step_s = 300.0;
/// Cells placed within the same two minutes share a column (ours: under a minute of error).
constexpr double placing_round_s = 120.0;
/// Places that see the same sun and, within a hundredth, the same sky share an exposure
/// (ours: 0.01 of a bright sky is under 2 W/m2).
constexpr double sky_views_apart = 100.0;
/// Half the depth of a step's tread behind its face: heat is taken to be even beyond (ours).
constexpr double behind_face_m = 0.15;
/// What a face sees when the user does not say where it looks: half the sky, no sun (ours).
constexpr double face_sky_view = 0.5;
/// A zone in the shade all day stands beside something: half the sky (ours).
constexpr double shaded_sky_view = 0.5;

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

/// Damp base courses. Gravel and soil: from memory, Farouki's ranges; sand as gravel less a
/// little; insulation: extruded foam board, common handbook value.
ThermalMaterial material_of(BaseKind kind) {
  constexpr ThermalMaterial gravel{1.4, 1.9e6};
  constexpr ThermalMaterial soil{1.2, 2.2e6};
  constexpr ThermalMaterial sand{1.3, 1.9e6};
  constexpr ThermalMaterial foam{0.035, 4.0e4};
  switch (kind) {
    case BaseKind::gravel:
      return gravel;
    case BaseKind::soil:
      return soil;
    case BaseKind::sand:
      return sand;
    case BaseKind::insulation:
      return foam;
  }
  return gravel;
}

/// Collects exposures and column cases, handing out the same index for the same thing.
class Batch {
 public:
  Batch(const SiteWeather& weather, const std::vector<Obstacle>& obstacles)
      : weather_(weather), obstacles_(obstacles) {}

  std::size_t cell_exposure(const Zone& zone, Point at) {
    // Without obstacles one place is as another.
    if (zone.shaded)
      return keep_once(shaded_, [&] { return expose_shaded(shaded_sky_view, weather_); });
    if (obstacles_.empty())
      return keep_once(open_, [&] { return expose(at, weather_, obstacles_); });
    return keep(expose(at, weather_, obstacles_));
  }

  std::size_t face_exposure(const FormedFace& face, Point at) {
    return keep(face.facing_deg ? expose_face(at, *face.facing_deg, weather_, obstacles_)
                                : expose_shaded(face_sky_view, weather_));
  }

  /// What else a column depends on: the zone (or the faces of it) and the mix.
  using Group = std::pair<int, std::size_t>;

  std::size_t add_case(Group group, std::size_t exposure, ColumnCase column) {
    const std::size_t mix = group.second;
    const auto key = std::make_tuple(group, exposure, column.placed_s, column.batched_s);
    const auto [found, is_new] = case_of_.try_emplace(key, columns_.size());
    if (is_new) {
      columns_.push_back({std::move(column), mix, exposure});
    }
    return found->second;
  }

  std::vector<ColumnHistory> solve(const std::vector<MixModel>& mixes,
                                   const SolverSettings& settings) const {
    std::vector<ColumnCase> cases;
    for (const PouredColumn& poured : columns_) {
      cases.push_back(poured.column);
      cases.back().mix = &mixes[poured.mix];
      cases.back().exposure = &exposures_[poured.exposure];
    }
    return solve_columns(cases, weather_, settings);
  }

  std::vector<PouredColumn> take_columns() { return std::move(columns_); }

  std::vector<CellExposure> take_exposures() { return std::move(exposures_); }

 private:
  template <class Expose>
  std::size_t keep_once(std::optional<std::size_t>& index, Expose expose) {
    if (!index) index = keep(expose());
    return *index;
  }

  std::size_t keep(CellExposure exposure) {
    const auto sky = static_cast<int>(std::lround(exposure.sky_view * sky_views_apart));
    auto& alike = exposures_of_sky_[sky];
    for (const std::size_t index : alike) {
      const CellExposure& kept = exposures_[index];
      if (kept.sunlit_fraction == exposure.sunlit_fraction && similar_light(kept, exposure))
        return index;
    }
    alike.push_back(exposures_.size());
    exposures_.push_back(std::move(exposure));
    return exposures_.size() - 1;
  }

  /// Faces that look different ways can share the sunlit pattern but not the light.
  static bool similar_light(const CellExposure& a, const CellExposure& b) {
    constexpr double light_apart_w_m2 = 5.0;
    return std::equal(a.shortwave_w_m2.begin(), a.shortwave_w_m2.end(), b.shortwave_w_m2.begin(),
                      b.shortwave_w_m2.end(),
                      [](double x, double y) { return std::abs(x - y) < light_apart_w_m2; });
  }

  const SiteWeather& weather_;
  const std::vector<Obstacle>& obstacles_;
  std::vector<CellExposure> exposures_;
  std::map<int, std::vector<std::size_t>> exposures_of_sky_;
  std::optional<std::size_t> shaded_;
  std::optional<std::size_t> open_;
  std::vector<PouredColumn> columns_;
  std::map<std::tuple<Group, std::size_t, double, double>, std::size_t> case_of_;
};

UtcTime midnight_before(UtcTime time, const TimeZone& zone) {
  return zone.utc_from_local(LocalTime(zone.local_from_utc(time).date())).utc;
}

/// The user's figure, else the mean air of the day before and of the pour day, as far as
/// the weather reaches.
double ground_temperature_c(const Job& job, const WeatherSeries& series) {
  if (job.site.ground_c) return *job.site.ground_c;
  const Duration day = boost::posix_time::hours(24);
  const UtcTime today = midnight_before(job.pour.start, job.site.time_zone);
  return series.mean_air_c(std::max(series.first(), today - day),
                           std::min(series.last(), today + day));
}

/// From the first batching to the last placing.
struct PlacingSpan {
  UtcTime first_batched;
  UtcTime last_placed;
};

PlacingSpan span_of(const OrderPlan& order) {
  PlacingSpan span{order.loads.front().batched, order.loads.front().empty};
  for (const Load& load : order.loads) {
    span.first_batched = std::min(span.first_batched, load.batched);
    span.last_placed = std::max(span.last_placed, load.empty);
  }
  return span;
}

TimeGrid grid_for(const Job& job, const PlacingSpan& span, UtcTime forecast_end) {
  const double transit_s = job.pour.transit_min * seconds_per_minute;
  TimeGrid grid;
  grid.step_s = grid_step_s;
  grid.start = span.first_batched;
  const double wanted_s = transit_s + horizon_h * seconds_per_hour;
  const double end_s = std::min(wanted_s, seconds_between(grid.start, forecast_end));
  grid.count = static_cast<std::size_t>(std::floor(end_s / grid_step_s)) + 1;
  return grid;
}

std::vector<CoverSpan> covers_on(const Zone& zone, const Job& job, const TimeGrid& grid) {
  std::vector<CoverSpan> spans;
  for (const Cover& cover : job.pour.covers) {
    const bool lies_here = cover.zones.empty() || std::find(cover.zones.begin(), cover.zones.end(),
                                                            zone.name) != cover.zones.end();
    if (!lies_here) continue;
    spans.push_back({seconds_between(grid.start, cover.from), seconds_between(grid.start, cover.to),
                     cover.resistance_m2k_w, true});
  }
  return spans;
}

/// What the columns of one zone have in common.
ColumnCase column_of_zone(const Zone& zone, const Job& job, const Practice& practice,
                          const TimeGrid& grid, double ground_c) {
  ColumnCase column;
  column.ground_c = ground_c;
  column.thickness_m = zone.thickness_m;
  if (zone.base.depth_m > 0.0) {
    column.below = {{zone.base.depth_m, material_of(zone.base.kind)}};
  }
  column.absorptance = absorptance_of(zone, practice.absorptance);
  column.covers = covers_on(zone, job, grid);
  return column;
}

/// Fits a column of a zone with the concrete that is placed at this share of it.
class Placer {
 public:
  Placer(const Job& job, const OrderPlan& order, const std::vector<MixModel>& mixes,
         const std::vector<std::size_t>& mix_of_load_in_zone, std::size_t zone,
         const TimeGrid& grid)
      : job_(job),
        order_(order),
        mixes_(mixes),
        mix_of_load_(mix_of_load_in_zone),
        zone_(zone),
        grid_(grid) {}

  /// Returns the mix's index.
  std::size_t fit(ColumnCase& column, double fraction) const {
    const PlacedFrom from = placed_from(order_, zone_, fraction);
    const double exact_s = seconds_between(grid_.start, from.placed);
    constexpr double rounding = 1e-6;  // what falls between two goes to the later one, always
    column.placed_s = std::floor(exact_s / placing_round_s + 0.5 + rounding) * placing_round_s;
    column.batched_s = seconds_between(grid_.start, order_.loads[from.load].batched);
    const std::size_t mix = mix_of_load_[from.load];
    column.concrete_c = mixes_[mix].discharge_c;
    if (job_.pour.curing == CuringKind::film && !column.formed_face) {
      const SettingParameters& setting = mixes_[mix].setting;
      column.curing_compound_from_set_age_h = setting.initial_set_h + setting.shift_h;
    }
    return mix;
  }

 private:
  const Job& job_;
  const OrderPlan& order_;
  const std::vector<MixModel>& mixes_;
  const std::vector<std::size_t>& mix_of_load_;
  std::size_t zone_;
  const TimeGrid& grid_;
};

void add_cells(const Zone& zone, ZoneRun& run, const ColumnCase& common, int group,
               const Placer& placer, Batch& batch) {
  for (Cell& cell : cut_into_cells(zone)) {
    CellRun cell_run;
    ColumnCase column = common;
    cell_run.mix = placer.fit(column, cell.placed_fraction);
    cell_run.placed_s = column.placed_s;
    cell_run.exposure = batch.cell_exposure(zone, cell.centre);
    cell_run.history = batch.add_case({group, cell_run.mix}, cell_run.exposure, std::move(column));
    cell_run.cell = cell;
    run.cells.push_back(cell_run);
  }
}

/// The share of the zone placed when the concrete reaches the point.
double placed_fraction_near(const ZoneRun& run, Point at) {
  return nearest_cell(run, at).cell.placed_fraction;
}

void add_faces(const Zone& zone, ZoneRun& run, const ColumnCase& common, int group,
               const Practice& practice, const Placer& placer, Batch& batch) {
  for (const FormedFace& face : zone.faces) {
    const Point at = face.at.value_or(centroid(zone.outline));
    ColumnCase column = common;
    column.formed_face = true;
    column.thickness_m = behind_face_m;
    column.below.clear();
    column.covers.clear();
    column.absorptance = practice.absorptance.form;
    const std::size_t mix = placer.fit(column, placed_fraction_near(run, at));
    FaceRun face_run;
    face_run.exposure = batch.face_exposure(face, at);
    face_run.history = batch.add_case({group, mix}, face_run.exposure, std::move(column));
    run.faces.push_back(face_run);
  }
}

std::string date_time_text(UtcTime time, const TimeZone& zone) {
  return fmt::format("{} {}", long_date(zone.local_from_utc(to_minute(time)).date()),
                     clock_time(time, zone));
}

/// Placing that outlasts a day, by its rate or by a zone's own hour; the computed time would end
/// before the concrete has set.
std::optional<Diagnostic> placing_fault(const Job& job, UtcTime last_placed) {
  constexpr double max_placing_h = 24.0;  // ours
  const double placing_h = seconds_between(job.pour.start, last_placed) / seconds_per_hour;
  if (placing_h <= max_placing_h) return std::nullopt;
  Diagnostic fault;
  fault.key = "pour";
  fault.message = fmt::format(
      "the last concrete is placed {}, {:.0f} h after the start; expected at "
      "most {:.0f} h",
      date_time_text(last_placed, job.site.time_zone), placing_h, max_placing_h);
  fault.next_step =
      "give it more hands (placing_crew), or plan each day's pour in a job file of its own";
  return fault;
}

std::optional<Diagnostic> coverage_fault(const Job& job, const WeatherSeries& series,
                                         UtcTime first_batched, UtcTime last_placed) {
  const TimeZone& zone = job.site.time_zone;
  Diagnostic fault;
  fault.key = "weather";
  if (const auto* file = std::get_if<ForecastFile>(&job.weather)) fault.where = file->where;
  // What is placed takes a step of the grid, or a rounding of its hour, to be computed.
  const double min_s = grid_step_s + placing_round_s;
  if (seconds_between(last_placed, series.last()) < min_s) {
    fault.message = fmt::format("the forecast ends {}, {} the last concrete is placed {}",
                                date_time_text(series.last(), zone),
                                series.last() < last_placed ? "before" : "as",
                                date_time_text(last_placed, zone));
    fault.next_step = "get a newer forecast, or correct the date of the pour";
    return fault;
  }
  if (series.first() > first_batched) {
    fault.message =
        fmt::format("the forecast starts {}, after the first load is batched {}",
                    date_time_text(series.first(), zone), date_time_text(first_batched, zone));
    fault.next_step = "use a forecast that starts earlier, or correct the date of the pour";
    return fault;
  }
  return std::nullopt;
}

/// The mixes of the job, each once, and which of them a zone gets from a load.
class MixTable {
 public:
  explicit MixTable(const Job& job) : job_(job) {}

  /// One entry a load. A load's own admixtures come before the zone's, these before the mix's.
  std::vector<std::size_t> of_loads(const Zone& zone, const std::vector<Load>& loads) {
    std::vector<std::size_t> mixes;
    for (const Load& load : loads) {
      mixes.push_back(index_of(
          load.own_admixtures ? load.admixtures : zone.admixtures.value_or(job_.mix.admixtures)));
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

void add_zones(PourRun& run, const Job& job, const Practice& practice, Batch& batch) {
  MixTable table(job);
  std::vector<std::vector<std::size_t>> mix_of_load;
  for (const Zone& zone : job.zones) mix_of_load.push_back(table.of_loads(zone, run.order.loads));
  run.mixes = table.take_models();
  const TimeGrid& grid = run.weather.grid;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const Zone& zone = job.zones[i];
    ZoneRun& zone_run = run.zones[i];
    zone_run.placing = run.order.placings[i];
    const ColumnCase common = column_of_zone(zone, job, practice, grid, run.ground_c);
    const Placer placer(job, run.order, run.mixes, mix_of_load[i], i, grid);
    const int group = static_cast<int>(2 * i);
    add_cells(zone, zone_run, common, group, placer, batch);
    add_faces(zone, zone_run, common, group + 1, practice, placer, batch);
    zone_run.mix = zone_run.cells.front().mix;
  }
}

}  // namespace

Parsed<PourRun> run_pour(const Job& job, const WeatherSeries& series, const Practice& practice,
                         const SolverSettings& settings) {
  validate(practice);
  Parsed<PourRun> reading;
  PourRun run;
  run.order = plan_order(job, practice.placing);  // asks whether the job can be planned
  const PlacingSpan span = span_of(run.order);
  auto fault = placing_fault(job, span.last_placed);
  if (!fault) fault = coverage_fault(job, series, span.first_batched, span.last_placed);
  if (fault) {
    reading.diagnostics.push_back(std::move(*fault));
    return reading;
  }
  const TimeGrid grid = grid_for(job, span, series.last());
  run.weather = site_weather(job.site, series, grid);
  run.ground_c = ground_temperature_c(job, series);
  run.forecast_cut_short = grid.end_s() + grid_step_s < horizon_h * seconds_per_hour;
  run.zones.resize(job.zones.size());
  Batch batch(run.weather, job.obstacles);
  add_zones(run, job, practice, batch);
  run.histories = batch.solve(run.mixes, settings);
  run.columns = batch.take_columns();
  run.exposures = batch.take_exposures();
  reading.value = std::move(run);
  return reading;
}

}  // namespace slabtide
