#pragma once

#include <cstddef>
#include <map>
#include <tuple>
#include <vector>

#include "pour_memo.h"
#include "slabtide/day/pour/order.h"
#include "slabtide/job/model/job.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

/// The ground under the columns of a pour, as sun, air and night leave the bare base.
///
/// Idealises: from midnight before the day before, base and soil at `ground_c`, by the columns' own
/// solver in steps of ten minutes: what takes the sun is the base (materials.h), shaded as the
/// place is. One run for what is alike: base, how it is kept, and exposure. A forecast that starts
/// later is taken to repeat its first day before it.
/// Status: ours. A measured ground temperature stands in its place.
class BareBases {
 public:
  /// `start` is where the columns count their seconds from.
  BareBases(const Job& job, const WeatherSeries& series, const OrderPlan& order, UtcTime start,
            double ground_c, PourMemo& memo);

  /// Remembers what a column will lie on, and from when; the first to ask of a column says.
  void lay_under(std::size_t column, double placed_s, const Zone& zone, std::size_t exposure,
                 Point at);
  void solve(const SolverSettings& settings);
  /// A column's `ground` when it is placed, once solved; empty where nothing was told of it.
  std::vector<GroundPoint> under(std::size_t column) const;

 private:
  struct Place {
    const Zone* zone;
    Point at;
    std::vector<std::size_t> columns;  // laid on it
  };
  struct Laid {
    double placed_s = 0.0;
    std::vector<GroundPoint> ground;
  };
  using Likeness = std::tuple<BaseKind, BaseKept, double, bool, bool, std::size_t>;

  static BarePlace bare(const Place& place);
  /// Whether the ground under all its columns is kept, which they then have.
  bool is_known(const Place& place, const KeptGrounds& kept);
  void solve(const std::vector<Place>& places, KeptGrounds* kept, const SolverSettings& settings);
  CellExposure exposure_of(const Place& place, const SunPath& path) const;

  const Job& job_;
  PourMemo& memo_;
  double ground_c_;
  double ahead_s_ = 0.0;  // of the columns' start
  SiteWeather weather_;
  std::vector<Place> places_;  // one a base run
  std::map<Likeness, std::size_t> run_of_;
  std::map<std::size_t, Laid> laid_;  // by column
};

}  // namespace slabtide
