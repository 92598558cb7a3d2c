#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/day/pour/order.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/geometry/cells.h"
#include "slabtide/job/model/job.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

class PourMemo;

/// A cell and the column that represents it.
struct CellRun {
  Cell cell;
  std::size_t exposure = 0;  ///< index into PourRun::exposures
  std::size_t history = 0;   ///< index into PourRun::histories
  std::size_t mix = 0;       ///< index into PourRun::mixes
  double placed_s = 0.0;     ///< from the weather grid's start
};

/// A formed face and the column that represents it.
struct FaceRun {
  std::size_t exposure = 0;
  std::size_t history = 0;
};

/// A zone with its cells and faces.
struct ZoneRun {
  ZonePlacing placing;
  std::size_t mix = 0;  ///< index into PourRun::mixes, for its first cell
  std::vector<CellRun> cells;
  std::vector<FaceRun> faces;   ///< in the order of Zone::faces
  double cell_m = cell_size_m;  ///< about the side of each cell
};

/// The input from which a column of the run was solved. Its pointers `mix` and `exposure` are not
/// set; the indices replace them, so that a run can be copied.
struct PouredColumn {
  ColumnCase column;
  std::size_t mix = 0;       ///< index into PourRun::mixes
  std::size_t exposure = 0;  ///< index into PourRun::exposures
};

/// The whole pour as computed: what each cell is exposed to and how it develops. Zones are parallel
/// to the job's.
struct PourRun {
  OrderPlan order;
  std::vector<MixModel> mixes;
  SiteWeather weather;
  std::vector<CellExposure> exposures;
  std::vector<PouredColumn> columns;  ///< parallel to histories
  std::vector<ColumnHistory> histories;
  std::vector<ZoneRun> zones;
  double ground_c = 0.0;
  /// The forecast ends before the requested horizon.
  bool forecast_cut_short = false;

  const MixModel& mix_of(const ZoneRun& zone) const { return mixes[zone.mix]; }
  UtcTime at(double seconds) const { return after_seconds(weather.grid.start, seconds); }
};

inline constexpr double horizon_h = 48.0;  ///< from the start of placing

/// What a pour has in common with others that are computed for the same site.
struct PourScope {
  double most_cells = max_cells;  ///< as in `cell_size_for`
  /// What runs of the site have in common, kept from one to the next; null computes it anew, as
  /// does a job with other obstacles. The results are the same. Must outlive the call.
  PourMemo* memo = nullptr;
};

/// Computes the pour. `value` is absent if the weather does not cover it: it starts after the first
/// load is batched, or ends before the last zone is placed.
Parsed<PourRun> run_pour(const Job& job, const WeatherSeries& series, const Practice& practice,
                         const SolverSettings& settings, const PourScope& scope = {});

/// The cell whose centre is nearest to a place; of equally near cells the one placed first,
/// whatever the rounding. Precondition: the zone has cells.
const CellRun& nearest_cell(const ZoneRun& zone, Point place);

}  // namespace slabtide
