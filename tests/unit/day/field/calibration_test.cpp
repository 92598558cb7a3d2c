#include <algorithm>
#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "day/field/seen_day.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "support/sample_job.h"
#include "support/scalar_formulas.h"

// Are the bands right? Two hundred invented pours whose truth does not follow the plan's model:
// weather with an error of its own that also varies from hour to hour, convection of another
// published form, an activation energy of setting anywhere in the published range, and everything
// else uniformly distributed where the plan assumes a normal distribution. There are no outside
// figures for this: the truth is ours.

namespace slabtide {
namespace {

constexpr int pours = 200;
constexpr std::size_t samples = 64;
constexpr double forecast_h = 15.0;           // of the pour day; later events are left out
constexpr double min_energy_j_mol = 27000.0;  // published set-time tables imply 27-39 kJ/mol
constexpr double max_energy_j_mol = 39000.0;
constexpr double one_in_ten_z = 1.2815515655446004;

/// The random values for a pour.
class Fate {
 public:
  explicit Fate(unsigned seed) : random_(seed) {}

  double between(double low, double high) {
    return std::uniform_real_distribution<>(low, high)(random_);
  }
  double normal(double deviation) { return std::normal_distribution<>(0.0, deviation)(random_); }
  /// Uniform, with one value in ten beyond `spread` on either side.
  double off(double spread) { return between(-1.0, 1.0) * spread / 0.8; }
  double factor(double fraction) { return std::exp(off(std::log1p(fraction))); }

 private:
  std::mt19937 random_;
};

Job some_job(Fate& fate) {
  Job job =
      test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 0.6, 0.6), Finish::stamp)});
  TypedWeather weather;
  weather.high_c = fate.between(14.0, 32.0);
  weather.low_c = weather.high_c - fate.between(7.0, 13.0);
  weather.dew_point_c = weather.low_c - fate.between(0.0, 4.0);
  weather.wind_10m_m_s = fate.between(1.5, 6.0);
  weather.cloud = {0.2, fate.between(0.0, 0.8), fate.between(0.0, 0.8), 0.3};
  job.weather = weather;
  job.mix.w_cm = fate.between(0.42, 0.50);
  job.mix.temperature = fate.between(14.0, 20.0) + 0.3 * (weather.high_c - 14.0);
  job.crew.finishers = 3;
  return job;
}

/// A forecast for the working hours of the pour day only, so that the columns need not be solved
/// further.
Forecast short_forecast(const Job& job) {
  Forecast forecast =
      high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date);
  const UtcTime end = after_seconds(job.pour.start, forecast_h * 3600.0);
  std::erase_if(forecast.hours, [end](const ForecastHour& hour) { return hour.at > end; });
  return forecast;
}

/// Convection as EnergyPlus' TARP model has it (Sparrow, Ramsey & Mass 1979; published): natural
/// plus 2.537 R_f sqrt(P V / A), R_f 1.52, here for a slab of 3 by 4.5 m, over DOE-2's.
double other_form_factor(double wind_m_s) {
  constexpr double warmer_k = 5.0;
  constexpr double perimeter_over_area = 1.11;
  const double natural = test::doe2_convection(warmer_k, 0.0).h_w_m2k;
  const double forced = 2.537 * 1.52 * std::sqrt(perimeter_over_area * wind_m_s);
  const double doe2 =
      test::doe2_convection(warmer_k, test::forced_convection_w_m2k(wind_m_s)).h_w_m2k;
  return (natural + forced) / doe2;
}

/// The actual weather: one error that lasts all day and another that varies from hour to hour.
SiteWeather true_weather(const SiteWeather& forecast, const SpreadRules& spread, Fate& fate) {
  const double growth = 1.0 + spread.unknown_age_h / spread.forecast_doubles_in_h;
  WeatherErrors errors;
  errors.air_k = growth * fate.off(spread.air_k);
  errors.dew_point_k = growth * fate.off(spread.dew_point_k);
  errors.wind_log = growth * fate.off(std::log1p(spread.wind_fraction));
  errors.cloud_fraction = growth * fate.off(spread.cloud_fraction);
  SiteWeather weather = with_errors(forecast, errors);
  constexpr double kept = 0.93;  // of the varying error, from one five minutes to the next
  double air_k = 0.0;
  double wind_log = 0.0;
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    air_k = kept * air_k + fate.normal(0.2);
    wind_log = kept * wind_log + fate.normal(0.08);
    weather.air_c[i] = std::max(weather.air_c[i] + air_k, weather.dew_point_c[i]);
    weather.wind_slab_m_s[i] *= std::exp(wind_log);
  }
  return weather;
}

double mean_of(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

Sample true_sample(const PourRun& run, const SpreadRules& spread, Fate& fate) {
  Sample sample;
  sample.mix.discharge_k = fate.off(spread.concrete_k);
  sample.mix.set_time_factor = fate.factor(spread.set_estimated_fraction);
  sample.mix.set_span_factor = fate.factor(spread.set_span_fraction);
  sample.mix.activation_energy_factor = fate.between(min_energy_j_mol, max_energy_j_mol) /
                                        run.mixes.front().setting.activation_energy_j_mol;
  sample.mix.bleed_factor = fate.factor(spread.bleed_fraction);
  sample.convection_factor = other_form_factor(mean_of(run.weather.wind_slab_m_s));
  sample.evaporation_factor = fate.factor(spread.evaporation_fraction);
  sample.absorptance_offset = fate.off(spread.absorptance);
  // Three trucks in ten are early and the others late, with longer delays less likely: one in ten
  // is late by 20 min.
  const bool early = fate.between(0.0, 1.0) < 0.3;
  sample.delay_s =
      early ? -60.0 * fate.between(0.0, 7.5) : -60.0 * 10.3 * std::log(fate.between(0.001, 1.0));
  return sample;
}

/// One pour, as planned and as it happened.
struct Pour {
  Job job;
  Forecast forecast;
  PourRun run;
  DayPlan plan;
  ColumnEvents truth;
};

Pour make_pour(unsigned seed, const Practice& practice) {
  Fate fate(seed);
  Pour pour;
  pour.job = some_job(fate);
  pour.forecast = short_forecast(pour.job);
  const auto series = WeatherSeries::from_forecast(pour.forecast);
  pour.run = run_pour(pour.job, *series.value, practice, SolverSettings{}).value.value();
  pour.plan = plan_day(pour.job, pour.run, practice);
  ColumnSet set = columns_of(pour.run);
  const SiteWeather came = true_weather(set.weather, practice.spread, fate);
  for (CellExposure& exposure : set.exposures) exposure = relit(exposure, set.weather, came);
  set.weather = came;
  ColumnQuestions questions;
  questions.operations = operations_of(Finish::stamp);
  visit_sampled(set, true_sample(pour.run, practice.spread, fate), SolverSettings{},
                [&](std::size_t column, const ColumnHistory& history, const MixModel& mix,
                    const SiteWeather& weather) {
                  if (column == 0)
                    pour.truth = events_of(history, mix, questions, weather, practice);
                });
  return pour;
}

/// A time of the plan with its band, and the true time.
struct Compared {
  std::optional<UtcTime> planned;
  std::optional<TimeBand> band;
  std::optional<double> true_s;
  bool comes_after_thumbprint = false;
};

std::vector<Compared> compared(const DayPlan& plan, const ColumnEvents& truth) {
  const PartPlan& pad = plan.zones[0].whole;
  std::vector<Compared> all{{pad.sheen_gone, pad.sheen_band, truth.sheen_gone_s, false},
                            {pad.initial_set, pad.initial_band, truth.initial_set_s, true},
                            {pad.final_set, pad.final_band, truth.final_set_s, true}};
  for (const Operation operation : operations_of(Finish::stamp)) {
    const OperationWindow& window = *pad.window(operation);
    const CellWindow& came = truth.window(operation);
    all.push_back({window.opens, window.opens_band, came.opens_s, false});
    all.push_back({window.closes, window.closes_band, came.closes_s,
                   operation == Operation::stamp || operation == Operation::detail_edge});
  }
  return all;
}

/// How good the bands of many pours were.
struct Tally {
  int in_band = 0;
  int early = 0;
  int late = 0;
  std::vector<double> errors_min;  ///< for events after the thumbprint
  std::vector<double> widths_min;

  void add(const std::vector<Compared>& times, const PourRun& run) {
    for (const Compared& one : times) {
      if (!one.true_s || !one.planned || !one.band || !one.band->early || !one.band->late) continue;
      const UtcTime at = run.at(*one.true_s);
      ++(at < *one.band->early ? early : at > *one.band->late ? late : in_band);
      if (!one.comes_after_thumbprint) continue;
      errors_min.push_back(std::abs(seconds_between(*one.planned, at)) / 60.0);
      widths_min.push_back(*band_minutes(*one.band));
    }
  }
  double fraction_in_band() const {
    return static_cast<double>(in_band) / (in_band + early + late);
  }
  static double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
  }
};

TEST_CASE("bands hold what they say over two hundred pours, and a thumbprint halves the error") {
  const Practice practice = default_practice();
  EnsembleSettings settings;
  settings.samples = samples;
  Tally before;
  Tally after;
  int left_out = 0;
  for (unsigned seed = 1; seed <= pours; ++seed) {
    const Pour pour = make_pour(seed, practice);
    const SampleScale scale = sample_scale(pour.run, pour.forecast, practice.spread);
    const DayModel model(pour.job, pour.run, pour.plan, practice, scale);
    const DayPlan plan = with_bands(pour.plan, pour.job, sample_days(model, settings));
    before.add(compared(plan, pour.truth), pour.run);
    REQUIRE(pour.truth.thumbprint_s);
    const double seen_s =
        *pour.truth.thumbprint_s +
        Fate(1000 + seed).normal(60.0 * practice.reading.thumbprint_min / one_in_ten_z);
    const Journal journal{
        {{ObservationKind::thumbprint, pour.run.at(seen_s), std::nullopt, "pad", {}, {}}}};
    const SeenDay seen = see_day(
        {pour.job, pour.forecast, practice, pour.run, pour.plan, std::nullopt, journal}, settings);
    left_out += static_cast<int>(seen.misfits.size());
    after.add(compared(seen.plan, pour.truth), pour.run);
  }
  const double error_before = Tally::median(before.errors_min);
  const double error_after = Tally::median(after.errors_min);
  MESSAGE("before: ", 100.0 * before.fraction_in_band(), " % in the band (", before.early,
          " earlier, ", before.late, " later), median error of what remains ", error_before,
          " min, band ", Tally::median(before.widths_min), " min");
  MESSAGE("after a thumbprint: ", 100.0 * after.fraction_in_band(), " % (", after.early,
          " earlier, ", after.late, " later), median error ", error_after, " min, band ",
          Tally::median(after.widths_min), " min; readings not counted: ", left_out);
  CHECK(before.fraction_in_band() >= 0.75);
  CHECK(before.fraction_in_band() <= 0.90);
  CHECK(error_after <= 0.5 * error_before);
  CHECK(after.fraction_in_band() >= 0.75);
  CHECK(after.fraction_in_band() <= 0.90);
  CHECK(left_out <= pours / 50);
}

}  // namespace
}  // namespace slabtide
