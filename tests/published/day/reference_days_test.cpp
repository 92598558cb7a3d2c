#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "published/day/reference_model.h"
#include "published/published_row.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/windows/saw_plan.h"
#include "slabtide/slab/stress/stress.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

// Five days beside a second model (reference_model.h) that shares no code with the solver: the base
// run from the day before, absorptance and evaporation by wetness, bleeding, set, strength and
// stress. The weather is the program's; so is what the mix comes to.

namespace slabtide::published_reference_days {
namespace {

using namespace test;

struct Day {
  std::string name;
  Job job;
  double base_absorptance = 0.75;
  double base_wetness = 0.1;
};

Job pad(double high_c, double low_c, double concrete_c, double start_h) {
  Job job = sample_job({zone_named("pad", rectangle(0, 0, 3, 3))});
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.high_c = high_c;
  weather.low_c = low_c;
  job.mix.temperature = concrete_c;
  job.mix.air_fraction = 0.02;  // so that a film of bleed water stands
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::minutes(std::lround(60.0 * start_h)));
  job.zones[0].tied = true;
  return job;
}

std::vector<Day> five_days() {
  std::vector<Day> days{{"hot sun", pad(35.0, 22.0, 29.0, 7.0)},
                        {"mild afternoon", pad(22.0, 10.0, 20.0, 14.0)},
                        {"cool shade", pad(13.0, 5.5, 16.0, 9.0)},
                        {"dry wind, curing film", pad(27.0, 12.0, 22.0, 8.0)},
                        {"cold, under blankets", pad(9.0, 1.0, 15.0, 10.0)}};
  days[2].job.zones[0].shaded = true;
  days[3].job.pour.curing = CuringKind::film;
  std::get<TypedWeather>(days[3].job.weather).wind_10m_m_s = 7.0;
  std::get<TypedWeather>(days[3].job.weather).dew_point_c = 2.0;
  days[4].job.pour.curing = CuringKind::blanket;
  days[4].job.zones[0].base.plastic = true;
  days[4].base_wetness = 0.0;
  return days;
}

double between(const std::vector<double>& x, const std::vector<double>& y, double at) {
  const auto above = std::upper_bound(x.begin(), x.end() - 1, at);
  const auto i = static_cast<std::size_t>(std::max(above - x.begin(), std::ptrdiff_t{1}));
  return y[i - 1] + (at - x[i - 1]) / (x[i] - x[i - 1]) * (y[i] - y[i - 1]);
}

/// Of what neither sets nor warms.
MixModel gravel() {
  MixModel mix;
  mix.setting = {.initial_set_h = 1.0, .final_set_h = 2.0};
  mix.hydration = {.tau_h = 1.0, .beta = 1.0};
  mix.concrete = {.conductivity_w_mk = 1.4, .heat_capacity_j_m3k = 1.9e6};
  return mix;
}

/// Under the slab as it is placed, `placed` on the bare base's clock.
Profile bare_base(const Day& day, const SiteWeather& weather, double ground_c, double placed_s) {
  const MixModel mix = gravel();
  const CellExposure exposure =
      day.job.zones[0].shaded ? expose_shaded(0.5, weather) : expose({0.0, 0.0}, weather, {});
  ColumnCase base;
  base.concrete_c = base.ground_c = ground_c;
  base.thickness_m = day.job.zones[0].base.depth_m;
  base.mix = &mix;
  base.exposure = &exposure;
  base.absorptance = day.base_absorptance;
  base.steady_wetness = day.base_wetness;
  const auto constant = [ground_c](double) { return ground_c; };
  const ReferenceHistory h = reference_column(base, weather, constant, placed_s);
  std::vector<double> depth_m{0.0};
  std::vector<double> c{h.surface_c.back()};
  depth_m.insert(depth_m.end(), h.depth_m.begin(), h.depth_m.end());
  c.insert(c.end(), h.cells_c.back().begin(), h.cells_c.back().end());
  return [depth_m, c](double at_m) { return between(depth_m, c, at_m); };
}

struct Runs {
  PlannedDay planned;
  ReferenceHistory reference;
};

Runs run(const Day& day) {
  PlannedDay planned(day.job);
  const PourRun& pour = planned.run();
  const WeatherSeries series = WeatherSeries::from_forecast(planned.forecast()).value.value();
  TimeGrid grid;
  grid.start = UtcTime(day.job.pour.date) - boost::posix_time::hours(24);
  const double ahead_s = seconds_between(grid.start, pour.weather.grid.start);
  const double placed_s = pour.columns[0].column.placed_s;
  grid.count = static_cast<std::size_t>((ahead_s + placed_s) / grid.step_s) + 2;
  const Profile below =
      bare_base(day, site_weather(day.job.site, series, grid), pour.ground_c, ahead_s + placed_s);
  ColumnCase column = pour.columns[0].column;
  column.ground.clear();
  column.mix = &pour.mixes[pour.columns[0].mix];
  column.exposure = &pour.exposures[pour.columns[0].exposure];
  constexpr double a_day_s = 24.0 * 3600.0;
  ReferenceHistory reference = reference_column(column, pour.weather, below, placed_s + a_day_s);
  return {std::move(planned), std::move(reference)};
}

constexpr Published minutes{.what = "events by a second model",
                            .source = "own equations and cells, SUNDIALS CVODE 6.4",
                            .status = "independent program",
                            .tolerance = 1.0,
                            .unit = "min",
                            .because = "what the solver is to keep"};
constexpr Published kelvins{.what = "temperatures of a day by a second model",
                            .source = "own equations and cells, SUNDIALS CVODE 6.4",
                            .status = "independent program",
                            .tolerance = 0.1,
                            .unit = "K",
                            .because = "what the solver is to keep"};

void compare_event(const std::string& row, const std::vector<double>& time_s,
                   const std::vector<double>& values, const ReferenceHistory& reference,
                   const std::vector<double>& theirs, double level) {
  const auto here = first_reaches(time_s, values, level);
  const auto there = first_reaches(reference.time_s, theirs, level);
  REQUIRE(here.has_value() == there.has_value());
  if (here) check_worst(minutes, row, "its own run", (*here - *there) / 60.0);
}

/// When the surface is first so far below its peak since initial set.
std::optional<double> surface_fallen_s(const ReferenceHistory& h, double fall_k) {
  const auto set_s = first_reaches(h.time_s, h.resistance_middle_psi, 500.0);
  if (!set_s) return std::nullopt;
  double peak_c = between(h.time_s, h.surface_c, *set_s);
  for (std::size_t i = 1; i < h.time_s.size(); ++i) {
    if (h.time_s[i] < *set_s) continue;
    peak_c = std::max(peak_c, h.surface_c[i]);
    const double under_k = peak_c - fall_k - h.surface_c[i];
    if (under_k < 0.0) continue;
    const double step_k = h.surface_c[i - 1] - h.surface_c[i];
    return h.time_s[i] - under_k / step_k * (h.time_s[i] - h.time_s[i - 1]);
  }
  return std::nullopt;
}

/// The largest over a day, past the minutes in which a cover is laid.
double worst_k(const ColumnHistory& h, const std::vector<double>& here,
               const ReferenceHistory& reference, const std::vector<double>& there, double laid_s) {
  double worst = 0.0;
  double at_h = 0.0;
  for (std::size_t i = 1; i < h.time_s.size(); ++i) {
    if (h.time_s[i] > reference.time_s.back()) break;
    if (std::abs(h.time_s[i] - laid_s) < 1800.0) continue;
    const double apart = here[i] - between(reference.time_s, there, h.time_s[i]);
    if (!(std::abs(apart) > std::abs(worst))) continue;
    worst = apart;
    at_h = (h.time_s[i] - h.time_s[0]) / 3600.0;
  }
  MESSAGE(worst, " K at most, ", at_h, " h after placing");
  return worst;
}

void compare(const Day& day) {
  const Runs runs = run(day);
  const ReferenceHistory& r = runs.reference;
  const ColumnHistory& h = runs.planned.run().histories[0];
  const auto event = [&](const std::string& what, const std::vector<double>& here,
                         const std::vector<double>& there, double level) {
    compare_event(day.name + ", " + what, h.time_s, here, r, there, level);
  };
  event("print", h.resistance_work_psi, r.resistance_work_psi, 40.0);
  event("initial set", h.resistance_middle_psi, r.resistance_middle_psi, 500.0);
  event("final set", h.resistance_middle_psi, r.resistance_middle_psi, 4000.0);
  event("500 psi", h.strength_psi, r.strength_psi, 500.0);
  const MixModel& mix = runs.planned.run().mixes[0];
  const double thickness_m = day.job.zones[0].thickness_m;
  constexpr double length_m = 4.0;
  const std::vector<double> here =
      stress_ratio(h, mix, {.uncut_length_m = length_m, .thickness_m = thickness_m, .tied = true});
  event("stress at half the strength", here, reference_tied_ratio(r, mix, length_m, thickness_m),
        0.5);
  const Practice practice = default_practice();
  const auto fallen_s = slabtide::surface_fallen_s(h, practice);
  const auto reference_fallen_s = surface_fallen_s(r, practice.saw.surface_fall_k);
  REQUIRE(fallen_s.has_value() == reference_fallen_s.has_value());
  if (fallen_s) {
    check_worst(minutes, day.name + ", surface fallen 15 °F", "its own run",
                (*fallen_s - *reference_fallen_s) / 60.0);
  }
  const auto final_s = first_reaches(h.time_s, h.resistance_middle_psi, 4000.0);
  const double laid_s = day.job.pour.curing == CuringKind::blanket ? final_s.value() : -1e9;
  check_worst(kelvins, day.name + ", surface", "its own run",
              worst_k(h, h.surface_c, r, r.surface_c, laid_s));
  check_worst(kelvins, day.name + ", mean", "its own run", worst_k(h, h.mean_c, r, r.mean_c, -1e9));
}

TEST_CASE("five days beside a second model") {
  for (const Day& day : five_days()) compare(day);
}

/// Evaporation of free water at the reference's own surface: while a film stands the slab gives it
/// all.
TEST_CASE("while a film of water stands evaporation is that of free water within 5 %") {
  for (const Day& day : five_days()) {
    const PlannedDay planned(day.job);
    const PourRun& run = planned.run();
    const ColumnHistory& h = run.histories[0];
    int seen = 0;
    for (std::size_t i = 1; i < h.time_s.size(); ++i) {
      if (!(h.bleed_water_kg_m2[i] > 0.02)) continue;
      const std::size_t k = run.weather.grid.index_at(h.time_s[i]);
      const double kelvin = h.surface_c[i] + 273.15;
      const double drive_pa =
          std::exp(77.345 + 0.0057 * kelvin - 7235.0 / kelvin) / std::pow(kelvin, 8.2) -
          run.weather.vapour_pressure_pa[k];
      const double free = 4.882 * 0.44 * drive_pa / 6894.76 *
                          (0.253 + 0.096 * run.weather.wind_slab_m_s[k] / 0.44704);
      if (!(free > 0.02)) continue;
      CAPTURE(day.name);
      CHECK(std::abs(h.evaporation_kg_m2_h[i] / free - 1.0) < 0.05);
      ++seen;
    }
    CHECK(seen > 5);
  }
}
}  // namespace

}  // namespace slabtide::published_reference_days
