#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <string_view>

#include <doctest/doctest.h>

#include "day/field/seen_day.h"
#include "slab/process/strength.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "support/other_slab.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

// Are the bands right? Invented pours whose truth does not follow the plan's model: a slab by other
// laws (support/other_slab.h), under weather with an error of its own that also varies from hour to
// hour, worked by a crew and a saw of their own mind. What the plan takes as normally distributed
// is uniform here, one in ten beyond the practice's spread on either side; the rest is drawn from
// ranges of published figures. There are no outside figures for this: the truth is ours.

namespace slabtide {
namespace {

constexpr int pours = 200;
constexpr int readings_every = 5;
constexpr std::size_t samples = 200;          // as many as a plan draws
constexpr double forecast_h = 40.0;           // of the pour; later events are left out
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
      test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 3.6, 0.6), Finish::stamp)});
  job.pour.placing_rate_m3_h = 20.0;
  job.pour.saws = {SawKind::early_entry, SawKind::wet};
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

/// A forecast no longer than what is compared, so that the columns need not be solved further.
Forecast short_forecast(const Job& job) {
  Forecast forecast =
      high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date);
  const UtcTime end = after_seconds(job.pour.start, forecast_h * 3600.0);
  std::erase_if(forecast.hours, [end](const ForecastHour& hour) { return hour.at > end; });
  return forecast;
}

/// The actual weather: one error that lasts all day and another that varies from hour to hour.
SiteWeather true_weather(const SiteWeather& forecast, const SpreadRules& spread, Fate& fate) {
  const double growth = 1.0 + spread.unknown_age_h / spread.forecast_doubles_in_h;
  WeatherErrors errors;
  errors.air_k = growth * fate.off(spread.air_k);
  errors.night_air_k = growth * fate.off(spread.night_air_k) - errors.air_k;
  errors.wind_ratio_log = fate.off(std::log1p(spread.wind_ratio_fraction));
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

/// By sun and air as they are when the concrete comes: half of the sol-air temperature's excess
/// (the base has warmed for some hours), more or less by how dark and damp it lies, and cooled by 2
/// K to the sky (ours).
double true_base_c(const SiteWeather& weather, const CellExposure& exposure, double placed_s,
                   Fate& fate) {
  const std::size_t i = weather.grid.index_at(placed_s);
  const double film_w_m2k = 8.0 + 4.0 * weather.wind_slab_m_s[i];
  const double sun_k = 0.75 * exposure.shortwave_w_m2[i] / (film_w_m2k + 5.0);
  return weather.air_c[i] + fate.between(0.35, 0.65) * sun_k - 2.0 + fate.off(1.0);
}

test::OtherSlab true_slab(const PourRun& run, const SiteWeather& weather, const Practice& practice,
                          Fate& fate) {
  const SpreadRules& spread = practice.spread;
  const ColumnCase& column = run.columns.front().column;
  const MixModel& mix = run.mixes.front();
  test::OtherSlab slab;
  // Three trucks in ten are early and the others late, with longer delays less likely: one in ten
  // is late by 20 min.
  const bool early = fate.between(0.0, 1.0) < 0.3;
  const double late_s =
      early ? -60.0 * fate.between(0.0, 7.5) : -60.0 * 10.3 * std::log(fate.between(0.001, 1.0));
  slab.placed_s = column.placed_s + late_s;
  slab.batched_s = column.batched_s + late_s;
  slab.concrete_c = mix.discharge_c + fate.off(spread.concrete_k);
  slab.base_top_c = true_base_c(weather, run.exposures.front(), slab.placed_s, fate);
  slab.ground_c = column.ground_c;
  slab.thickness_m = column.thickness_m;
  slab.concrete = mix.concrete;
  slab.below = column.below;
  slab.drying_factor = fate.factor(spread.evaporation_fraction);
  slab.wet_absorptance = column.absorptance + fate.off(spread.absorptance);
  slab.dry_absorptance = slab.wet_absorptance - fate.between(0.13, 0.30);
  slab.initial_set_h = mix.setting.initial_set_h * fate.factor(spread.set_estimated_fraction);
  const double span = mix.setting.final_set_h / mix.setting.initial_set_h - 1.0;
  slab.final_set_h = slab.initial_set_h * (1.0 + span * fate.factor(spread.set_span_fraction));
  slab.dead_h = fate.between(-0.3, 0.3) * slab.initial_set_h;
  slab.energy_j_mol = fate.between(min_energy_j_mol, max_energy_j_mol);
  slab.steeper_in_cold = fate.between(0.0, 1.0) < 0.5;
  slab.bleed_kg_m2 = mix.bleed_kg_m2_per_mm * 1000.0 * slab.thickness_m * column.bleed_up_fraction *
                     fate.factor(spread.bleed_fraction);
  // Usual mixes bleed 0.5 to 1.5 kg/m2/h at first (ACI 305, Powers; from memory).
  slab.first_bleed_kg_m2_h = std::exp(fate.between(std::log(0.5), std::log(1.5)));
  slab.evenly_fraction = fate.between(0.2, 0.6);
  slab.heat_j_m3 = mix.hydration.cementitious_kg_m3 * 1000.0 * fate.between(250.0, 370.0);
  slab.half_heat_h = fate.between(13.0, 20.0) * slab.initial_set_h / mix.setting.initial_set_h;
  // 4000 psi and the margin that plants aim at; some 100 psi at final set (notes on ASTM C403) and
  // a quarter after a day, where measured mixes have 0.29 (Yeh's data, w/c 0.40) and the trade's
  // quarter of f'c is 0.19; as far off as early strength is foretold.
  slab.strength_28_d_psi = 5200.0 + fate.off(spread.strength_margin_psi);
  slab.one_day_fraction = 0.25 * fate.factor(spread.strength_fraction);
  slab.final_set_psi = 100.0 * fate.factor(0.3);
  return slab;
}

/// The crew and the saw of the day.
Practice true_practice(const Practice& practice, Fate& fate) {
  const SpreadRules& spread = practice.spread;
  PracticeErrors errors;
  errors.ready_factor = fate.factor(spread.ready_fraction);
  errors.too_stiff_factor = fate.factor(spread.too_stiff_fraction);
  errors.saw_strength_factor =
      fate.factor(spread.saw_strength_fraction) * fate.factor(spread.aggregate_saw_fraction);
  return with_errors(practice, errors);
}

/// When the cuts are due: by another law of stress, or the surface's fall.
std::optional<double> true_cut_by_s(const ColumnHistory& history, const test::OtherSlab& slab,
                                    const MixModel& mix, const Practice& practice, Fate& fate) {
  const test::OtherStress stress{
      .length_m = 3.6,
      .expansion_per_k =
          mix.expansion_per_k * fate.factor(practice.spread.aggregate_expansion_fraction),
      .from_set_age_h = slab.final_set_h + fate.between(0.0, 2.0),
      .friction = fate.between(0.9, 1.8),
      .modulus_factor = fate.between(0.8, 1.2),
      .lasting = fate.between(0.4, 0.7)};
  const auto by_stress = test::other_half_strength_s(history, stress);
  const auto by_surface = surface_fallen_s(history, practice);
  if (!by_stress || !by_surface) return by_stress ? by_stress : by_surface;
  return std::min(*by_stress, *by_surface);
}

/// One pour, as planned and as it happened.
struct Pour {
  Job job;
  Forecast forecast;
  PourRun run;
  DayPlan plan;
  ColumnEvents truth;
  std::optional<double> cut_by_s;
};

Pour make_pour(unsigned seed, const Practice& practice) {
  Fate fate(seed);
  Pour pour;
  pour.job = some_job(fate);
  pour.forecast = short_forecast(pour.job);
  const auto series = WeatherSeries::from_forecast(pour.forecast);
  pour.run = run_pour(pour.job, *series.value, practice, SolverSettings{}).value.value();
  pour.plan = plan_day(pour.job, pour.run, practice);
  pour.plan.zones[0].saws = test::uncut_saws(pour.job, {pour.run, pour.plan});
  const SiteWeather came = true_weather(pour.run.weather, practice.spread, fate);
  const CellExposure exposure = relit(pour.run.exposures.front(), pour.run.weather, came);
  const test::OtherSlab slab = true_slab(pour.run, came, practice, fate);
  const Practice crew = true_practice(practice, fate);
  const ColumnHistory history = test::other_history(slab, came, exposure);
  ColumnQuestions questions;
  questions.operations = operations_of(Finish::stamp);
  questions.next_day = true;
  const MixModel& mix = pour.run.mixes.front();
  pour.truth = events_of(history, mix, questions, came, crew);
  for (const SawKind kind : kinds_of_saw) {
    const Operation saw = kind == SawKind::early_entry ? Operation::saw_dry : Operation::saw_wet;
    pour.truth.window(saw).opens_s = saw_opens_s(kind, history, Aggregate::unknown, crew);
  }
  pour.cut_by_s = true_cut_by_s(history, slab, mix, crew, fate);
  return pour;
}

enum class Kind { sheen, work_opens, work_closes, set, saw_opens, saw_due, wash };
constexpr std::array<std::string_view, 7> kind_words{
    "sheen gone", "work opens", "work closes", "set", "saw opens", "saw due", "wash"};

/// Bands are to hold 75 to 85 % of the true times of each kind. What misses that, by its figure: a
/// kind that joins this list, leaves it, or comes to miss by another figure fails. A figure of 200
/// times is itself uncertain by 3.
struct Missed {
  Kind kind;
  double percent;
};
constexpr std::array missed_kinds{
    // None comes before its band: here stress counts only from some time after final set on.
    Missed{Kind::saw_due, 88.0}};
constexpr double same_percent = 1.0;

/// A time of the plan with its band, and the true time.
struct Compared {
  Kind kind;
  std::optional<UtcTime> planned;
  std::optional<TimeBand> band;
  std::optional<double> true_s;
  bool comes_after_thumbprint = false;
};

std::vector<Compared> compared(const DayPlan& plan, const Pour& pour) {
  const PartPlan& pad = plan.zones[0].whole;
  const ColumnEvents& truth = pour.truth;
  std::vector<Compared> all{
      {Kind::sheen, pad.sheen_gone, pad.sheen_band, truth.sheen_gone_s},
      {Kind::set, pad.initial_set, pad.initial_band, truth.initial_set_s, true},
      {Kind::set, pad.final_set, pad.final_band, truth.final_set_s, true}};
  for (const Operation operation : operations_of(Finish::stamp)) {
    const OperationWindow& window = *pad.window(operation);
    const CellWindow& came = truth.window(operation);
    all.push_back({Kind::work_opens, window.opens, window.opens_band, came.opens_s});
    all.push_back({Kind::work_closes, window.closes, window.closes_band, came.closes_s,
                   operation == Operation::stamp || operation == Operation::detail_edge});
  }
  for (const SawPlan& saw : plan.zones[0].saws) {
    const Operation kind =
        saw.kind == SawKind::early_entry ? Operation::saw_dry : Operation::saw_wet;
    all.push_back({Kind::saw_opens, saw.opens, saw.opens_band, truth.window(kind).opens_s});
  }
  const SawPlan& saw = plan.zones[0].saws.front();
  all.push_back({Kind::saw_due, saw.latest, saw.latest_band, pour.cut_by_s});
  const OperationWindow& wash = *pad.window(Operation::wash);
  all.push_back({Kind::wash, wash.opens, wash.opens_band, truth.window(Operation::wash).opens_s});
  return all;
}

struct Count {
  int in_band = 0;
  int early = 0;
  int late = 0;
  std::vector<double> off_min;  ///< true less planned

  int all() const { return in_band + early + late; }
  double percent_in_band() const { return 100.0 * in_band / std::max(1, all()); }
};

void check_kind(Kind kind, const Count& count) {
  constexpr double min_percent = 75.0;
  constexpr double max_percent = 85.0;
  const double percent = count.percent_in_band();
  const auto missed = std::find_if(missed_kinds.begin(), missed_kinds.end(),
                                   [kind](const Missed& one) { return one.kind == kind; });
  if (missed == missed_kinds.end()) {
    CHECK(percent >= min_percent);
    CHECK(percent <= max_percent);
    return;
  }
  CHECK(std::abs(percent - missed->percent) < same_percent);
  CHECK_FALSE((percent >= min_percent && percent <= max_percent));
}

double median(std::vector<double> values) {
  if (values.empty()) return 0.0;
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

/// How good the bands of many pours were.
struct Tally {
  std::array<Count, kind_words.size()> kinds;
  std::vector<double> errors_min;  ///< for events after the thumbprint
  std::vector<double> widths_min;

  void add(const std::vector<Compared>& times, const PourRun& run) {
    for (const Compared& one : times) {
      if (!one.true_s || !one.planned || !one.band || !one.band->early || !one.band->late) continue;
      const UtcTime at = run.at(*one.true_s);
      Count& kind = kinds[static_cast<std::size_t>(one.kind)];
      ++(at < *one.band->early ? kind.early : at > *one.band->late ? kind.late : kind.in_band);
      kind.off_min.push_back(seconds_between(*one.planned, at) / 60.0);
      if (!one.comes_after_thumbprint) continue;
      errors_min.push_back(std::abs(seconds_between(*one.planned, at)) / 60.0);
      widths_min.push_back(*band_minutes(*one.band));
    }
  }
  double fraction_in_band() const {
    int in_band = 0;
    int all = 0;
    for (const Count& kind : kinds) {
      in_band += kind.in_band;
      all += kind.all();
    }
    return static_cast<double>(in_band) / all;
  }
};

void tell(const char* when, const Tally& tally) {
  for (std::size_t k = 0; k < kind_words.size(); ++k) {
    const Count& kind = tally.kinds[k];
    MESSAGE(when, ", ", kind_words[k], ": ", kind.percent_in_band(), " % of ", kind.all(),
            " in the band (", kind.early, " earlier, ", kind.late, " later), off by ",
            median(kind.off_min), " min in the middle");
  }
  MESSAGE(when, ": ", 100.0 * tally.fraction_in_band(), " % of all, median error of what remains ",
          median(tally.errors_min), " min, band ", median(tally.widths_min), " min");
}

TEST_CASE("bands hold what they say over two hundred pours, and a thumbprint halves the error") {
  const Practice practice = default_practice();
  EnsembleSettings settings;
  settings.samples = samples;
  Tally before;
  Tally unread;  // of the pours that have a thumbprint, without it
  Tally read;
  int left_out = 0;
  for (unsigned seed = 1; seed <= pours; ++seed) {
    const Pour pour = make_pour(seed, practice);
    const SampleScale scale = sample_scale(pour.job, pour.run, pour.forecast, practice.spread);
    const DayModel model(pour.job, pour.run, pour.plan, practice, scale);
    const DayPlan plan = with_bands(pour.plan, pour.job, sample_days(model, settings));
    before.add(compared(plan, pour), pour.run);
    if (seed % readings_every != 0) continue;
    unread.add(compared(plan, pour), pour.run);
    REQUIRE(pour.truth.thumbprint_s);
    const double seen_s =
        *pour.truth.thumbprint_s +
        Fate(1000 + seed).normal(60.0 * practice.reading.thumbprint_min / one_in_ten_z);
    const Journal journal{
        {{ObservationKind::thumbprint, pour.run.at(seen_s), std::nullopt, "pad", {}, {}}}};
    const SeenDay seen = see_day(
        {pour.job, pour.forecast, practice, pour.run, pour.plan, std::nullopt, journal}, settings);
    left_out += static_cast<int>(seen.misfits.size());
    read.add(compared(seen.plan, pour), pour.run);
  }
  tell("before", before);
  tell("unread", unread);
  tell("after a thumbprint", read);
  MESSAGE("readings not counted: ", left_out);
  for (std::size_t k = 0; k < kind_words.size(); ++k) {
    CAPTURE(kind_words[k]);
    CHECK(before.kinds[k].all() > pours / 2);
    check_kind(static_cast<Kind>(k), before.kinds[k]);
  }
  CHECK(median(read.errors_min) <= 0.5 * median(unread.errors_min));
  CHECK(read.fraction_in_band() >= 0.75);
  CHECK(read.fraction_in_band() <= 0.90);
  CHECK(left_out <= pours / 50);
}

}  // namespace
}  // namespace slabtide
