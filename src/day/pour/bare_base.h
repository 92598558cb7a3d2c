#pragma once

#include <cstddef>
#include <map>
#include <tuple>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/job/model/job.h"
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
  BareBases(const Job& job, const WeatherSeries& series, const PourRun& run);

  /// Remembers what a column will lie on; the first to ask of a column says.
  void lay_under(std::size_t column, const Zone& zone, std::size_t exposure, Point at);
  /// Gives the columns their `ground`.
  void fill(std::vector<PouredColumn>& columns, const SolverSettings& settings) const;

 private:
  struct Place {
    const Zone* zone;
    Point at;
  };
  using Likeness = std::tuple<BaseKind, BaseKept, double, bool, bool, std::size_t>;

  CellExposure exposure_of(const Place& place) const;
  std::vector<ColumnSolution> solve(const SolverSettings& settings) const;

  const Job& job_;
  const PourRun& run_;
  SiteWeather weather_;
  std::vector<Place> places_;  // one a base run
  std::map<Likeness, std::size_t> run_of_;
  std::map<std::size_t, std::size_t> run_under_;  // by column
};

}  // namespace slabtide
