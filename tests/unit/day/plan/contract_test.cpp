#include <cmath>
#include <functional>
#include <limits>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "day/plan/validate_plan.h"
#include "day/pour/validate_run.h"
#include "job/checks/validate.h"
#include "report/files/calendar.h"
#include "report/files/csv_plan.h"
#include "report/files/json_plan.h"
#include "report/page/page_plan.h"
#include "slab/mix/mix_model.h"
#include "slabtide/day/crew/plan_crew.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/report/text/text_crew.h"
#include "slabtide/report/text/text_plan.h"
#include "slabtide/report/text/text_saw.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "support/number_checks.h"
#include "support/random_job.h"
#include "support/sample_job.h"
#include "weather/readers/validate_forecast.h"

// Calls that violate the contract: a job, a forecast or a practice with one thing wrong, passed to
// every function that takes one. Each function must either throw std::invalid_argument with a
// message that names the field, or return normally because it does not use the field.

namespace slabtide::test {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double inf = std::numeric_limits<double>::infinity();
constexpr double huge = 1e308;
constexpr int crowd = 1000000000;
const std::string no_utf8 = "caf\xE9 \xF0\x28";

/// What a plan is made from.
struct Given {
  Job job;
  Forecast forecast;
  Practice practice = default_practice();
  SolverSettings solver;
};

Given good() {
  Given given;
  Zone pad = zone_named("pad", rectangle(0.0, 0.0, 3.0, 2.0), Finish::stamp);
  pad.border = Border{0.3, Finish::broom};
  pad.faces = {FormedFace{2.0, 0.15, 0.3, 180.0, Point{1.0, 0.0}}};
  Zone walk = zone_named("walk", rectangle(4.0, 0.0, 1.2, 4.0));
  walk.joints = {Joint{{4.0, 2.0}, {5.2, 2.0}}};
  given.job = sample_job({pad, walk});
  given.job.obstacles = {Obstacle{"house", ObstacleKind::wall, {0.0, 3.0}, {6.0, 3.0}, 0.0, 4.0}};
  Admixture retarder;
  retarder.dose_ml_100kg = 130.0;
  given.job.mix.admixtures = {retarder};
  given.job.order.loads = {LoadNote{1, {retarder}}};
  Cover sheet;
  sheet.kind = CuringKind::plastic;
  sheet.from = given.job.pour.start + boost::posix_time::hours(6);
  sheet.to = sheet.from + boost::posix_time::hours(12);
  given.job.pour.covers = {sheet};
  given.job.pour.saws = {SawKind::wet};
  given.forecast = high_low_forecast(std::get<TypedWeather>(given.job.weather), given.job.site,
                                     given.job.pour.date);
  given.solver.threads = 1;
  return given;
}

/// One thing that is wrong, and what the message must name.
struct Slip {
  std::string field;
  std::function<void(Given&)> make;
};

/// The same mistake with each of the values that are never valid.
void add(std::vector<Slip>& slips, const std::string& field,
         const std::function<void(Given&, double)>& make) {
  for (const double value : {nan, inf, -inf, huge, -huge, -1.0e6}) {
    slips.push_back({field, [make, value](Given& given) { make(given, value); }});
  }
}

std::vector<Slip> zone_slips() {
  std::vector<Slip> slips;
  const auto zone = [&slips](const std::string& field, const std::function<void(Zone&)>& make) {
    slips.push_back({"zone[1]." + field, [make](Given& given) { make(given.job.zones[0]); }});
  };
  zone("outline", [](Zone& z) { z.outline = {}; });
  zone("outline", [](Zone& z) { z.outline = {{0, 0}, {3, 2}, {3, 0}, {0, 2}}; });
  zone("outline", [](Zone& z) { z.outline = {{0, 0}, {3, 0}}; });
  zone("outline", [](Zone& z) { z.outline[1].x_m = nan; });
  zone("outline", [](Zone& z) { z.outline[2] = {huge, huge}; });
  zone("outline", [](Zone& z) { z.outline = rectangle(-900.0, -900.0, 1800.0, 1800.0); });
  zone("thickness_m", [](Zone& z) { z.thickness_m = 0.0; });
  zone("path", [](Zone& z) { z.path = Walkway{}; });
  zone("path", [](Zone& z) { z.path = Walkway{{{0, 0}, {0, 0}}, 1.0}; });
  zone("path", [](Zone& z) { z.path = Walkway{{{0, 0}, {nan, 5}}, 1.0}; });
  zone("border.width_m", [](Zone& z) { z.border->width_m = 1.5; });
  zone("name", [](Zone& z) { z.name = no_utf8; });
  zone("name", [](Zone& z) { z.name.clear(); });
  zone("placed_at", [](Zone& z) { z.placed_at = UtcTime(boost::posix_time::not_a_date_time); });
  zone("placed_at", [](Zone& z) { z.placed_at = UtcTime(boost::posix_time::pos_infin); });
  zone("finish", [](Zone& z) { z.finish = static_cast<Finish>(77); });
  zone("colour", [](Zone& z) { z.colour = static_cast<Colour>(-1); });
  zone("base.kind", [](Zone& z) { z.base.kind = static_cast<BaseKind>(9); });
  zone("base.kept", [](Zone& z) { z.base.kept = static_cast<BaseKept>(4); });
  const auto number = [&slips](const std::string& field,
                               const std::function<void(Zone&, double)>& make) {
    add(slips, "zone[1]." + field, [make](Given& g, double value) { make(g.job.zones[0], value); });
  };
  number("thickness_m", [](Zone& z, double v) { z.thickness_m = v; });
  number("base.depth_m", [](Zone& z, double v) { z.base.depth_m = v; });
  number("border.width_m", [](Zone& z, double v) { z.border->width_m = v; });
  number("face[1].length_m", [](Zone& z, double v) { z.faces[0].length_m = v; });
  number("face[1].height_m", [](Zone& z, double v) { z.faces[0].height_m = v; });
  number("face[1].facing_deg", [](Zone& z, double v) { z.faces[0].facing_deg = v; });
  number("face[1].at", [](Zone& z, double v) { z.faces[0].at = Point{v, 0.0}; });
  number("absorptance", [](Zone& z, double v) { z.absorptance = v; });
  number("placed_toward_deg", [](Zone& z, double v) { z.placed_toward_deg = v; });
  return slips;
}

std::vector<Slip> job_slips() {
  std::vector<Slip> slips;
  const auto job = [&slips](const std::string& field, const std::function<void(Job&)>& make) {
    slips.push_back({field, [make](Given& given) { make(given.job); }});
  };
  job("zone", [](Job& j) { j.zones.clear(); });
  job("zone[2].name", [](Job& j) { j.zones[0].name = j.zones[1].name; });
  job("zone_order", [](Job& j) { j.pour.placing_sequence.clear(); });
  job("zone_order", [](Job& j) { j.pour.placing_sequence = {"pad", "pad"}; });
  job("zone_order", [](Job& j) { j.pour.placing_sequence = {"pad", "somewhere"}; });
  job("name", [](Job& j) { j.name = no_utf8; });
  job("site.name", [](Job& j) { j.site.name = no_utf8; });
  job("mix.name", [](Job& j) { j.mix.name = no_utf8; });
  job("obstacle[1].name", [](Job& j) { j.obstacles[0].name = no_utf8; });
  job("obstacle[1].to", [](Job& j) { j.obstacles[0].to = j.obstacles[0].from; });
  job("pour.date", [](Job& j) { j.pour.date = Date(boost::gregorian::not_a_date_time); });
  job("pour.date", [](Job& j) { j.pour.date = Date(1500, 1, 1); });
  job("pour.start", [](Job& j) { j.pour.start = UtcTime(boost::posix_time::not_a_date_time); });
  job("pour.start", [](Job& j) { j.pour.start = UtcTime(Date(9998, 1, 1)); });
  job("pour.placing_crew", [](Job& j) { j.pour.placing_crew = 0; });
  job("pour.placing_crew", [](Job& j) { j.pour.placing_crew = crowd; });
  job("crew.finishers", [](Job& j) { j.crew.finishers = crowd; });
  job("crew.finishers", [](Job& j) { j.crew.finishers = -3; });
  job("pour.cover[1].to", [](Job& j) { j.pour.covers[0].to = j.pour.covers[0].from; });
  job("pour.cover[1].zones", [](Job& j) { j.pour.covers[0].zones = {"nowhere"}; });
  job("pour.hauling", [](Job& j) { j.pour.hauling = static_cast<Hauling>(8); });
  job("order.load[1].number", [](Job& j) { j.order.loads[0].number = 0; });
  job("zone[2].joint[1].from", [](Job& j) { (*j.zones[1].joints)[0].from.x_m = nan; });
  job("zone[2].joint[1].to", [](Job& j) { (*j.zones[1].joints)[0].to = {4.0, 2.0}; });
  const auto number = [&slips](const std::string& field,
                               const std::function<void(Job&, double)>& make) {
    add(slips, field, [make](Given& given, double value) { make(given.job, value); });
  };
  number("site.latitude_deg", [](Job& j, double v) { j.site.latitude_deg = v; });
  number("site.longitude_deg", [](Job& j, double v) { j.site.longitude_deg = v; });
  number("site.elevation_m", [](Job& j, double v) { j.site.elevation_m = v; });
  number("site.measured_wind_ratio", [](Job& j, double v) { j.site.measured_wind_ratio = v; });
  number("site.ground_c", [](Job& j, double v) { j.site.ground_c = v; });
  number("pour.transit_min", [](Job& j, double v) { j.pour.transit_min = v; });
  number("pour.haul_distance_m", [](Job& j, double v) { j.pour.haul_distance_m = v; });
  number("pour.placing_rate_m3_h", [](Job& j, double v) { j.pour.placing_rate_m3_h = v; });
  number("pour.cover[1].resistance_m2k_w",
         [](Job& j, double v) { j.pour.covers[0].resistance_m2k_w = v; });
  number("order.load_size_m3", [](Job& j, double v) { j.order.load_size_m3 = v; });
  number("order.allowance_share", [](Job& j, double v) { j.order.allowance_fraction = v; });
  number("order.truck_spacing_min", [](Job& j, double v) { j.order.truck_spacing_min = v; });
  number("crew.arrive_before_min", [](Job& j, double v) { j.crew.arrive_before_min = v; });
  number("obstacle[1].height_m", [](Job& j, double v) { j.obstacles[0].height_m = v; });
  number("obstacle[1].from", [](Job& j, double v) { j.obstacles[0].from.y_m = v; });
  number("obstacle[1].albedo", [](Job& j, double v) { j.obstacles[0].albedo = v; });
  number("obstacle[1].light_through", [](Job& j, double v) { j.obstacles[0].light_through = v; });
  return slips;
}

std::vector<Slip> mix_slips() {
  std::vector<Slip> slips;
  const auto mix = [&slips](const std::string& field, const std::function<void(Mix&)>& make) {
    slips.push_back({field, [make](Given& given) { make(given.job.mix); }});
  };
  mix("admixture[1]", [](Mix& m) { m.admixtures[0].dose_ml_100kg.reset(); });
  mix("admixture[1]", [](Mix& m) { m.admixtures[0].shift_h = 1.0; });
  mix("admixture[1].kind", [](Mix& m) { m.admixtures[0].kind = static_cast<AdmixtureKind>(44); });
  mix("supplier_final_set_h", [](Mix& m) { m.supplier_initial_set_h = 4.0; });
  mix("supplier_final_set_h", [](Mix& m) {
    m.supplier_initial_set_h = 6.0;
    m.supplier_final_set_h = 5.0;
  });
  mix("mix.temperature", [](Mix& m) { m.temperature = IngredientTemperatures{}; });
  mix("mix", [](Mix& m) { m.ash_fraction = m.slag_fraction = 0.55; });
  mix("mix.aggregate", [](Mix& m) { m.aggregate = static_cast<Aggregate>(99); });
  const auto number = [&slips](const std::string& field,
                               const std::function<void(Mix&, double)>& make) {
    add(slips, field, [make](Given& given, double value) { make(given.job.mix, value); });
  };
  number("mix.cementitious_kg_m3", [](Mix& m, double v) { m.cementitious_kg_m3 = v; });
  number("mix.w_cm", [](Mix& m, double v) { m.w_cm = v; });
  number("mix.air_share", [](Mix& m, double v) { m.air_fraction = v; });
  number("mix.silica_fume_share", [](Mix& m, double v) { m.silica_fume_fraction = v; });
  number("mix.specified_strength_psi", [](Mix& m, double v) { m.specified_strength_psi = v; });
  number("mix.strength_margin_psi", [](Mix& m, double v) { m.strength_margin_psi = v; });
  number("mix.temperature", [](Mix& m, double v) { m.temperature = v; });
  number("mix.learned.set_factor", [](Mix& m, double v) { m.learned = LearnedSet{v, 1, 0.1}; });
  number("admixture[1].dose_ml_100kg", [](Mix& m, double v) { m.admixtures[0].dose_ml_100kg = v; });
  number("admixture[1].shift_h", [](Mix& m, double v) {
    m.admixtures[0] = {};
    m.admixtures[0].shift_h = v;
  });
  return slips;
}

std::vector<Slip> weather_slips() {
  std::vector<Slip> slips;
  const auto row = [&slips](const std::string& field,
                            const std::function<void(ForecastHour&, double)>& make) {
    add(slips, "hours[4]." + field,
        [make](Given& given, double value) { make(given.forecast.hours[3], value); });
  };
  row("air_c", [](ForecastHour& h, double v) { h.air_c = v; });
  row("dew_point_c", [](ForecastHour& h, double v) { h.dew_point_c = v; });
  row("wind_10m_m_s", [](ForecastHour& h, double v) { h.wind_10m_m_s = v; });
  row("cloud_share", [](ForecastHour& h, double v) { h.cloud_fraction = v; });
  row("solar_w_m2", [](ForecastHour& h, double v) { h.solar_w_m2 = v; });
  row("rain_mm", [](ForecastHour& h, double v) { h.rain_mm = v; });
  row("rain_chance", [](ForecastHour& h, double v) { h.rain_chance = v; });
  slips.push_back(
      {"hours[4].at", [](Given& g) { g.forecast.hours[3].at = g.forecast.hours[2].at; }});
  slips.push_back({"hours[4].at", [](Given& g) {
                     g.forecast.hours[3].at = UtcTime(boost::posix_time::not_a_date_time);
                   }});
  slips.push_back({"source", [](Given& g) { g.forecast.source = no_utf8; }});
  slips.push_back({"", [](Given& g) { g.forecast.hours.clear(); }});
  const auto typed = [&slips](const std::string& field, double TypedWeather::*member) {
    add(slips, "weather." + field, [member](Given& given, double value) {
      std::get<TypedWeather>(given.job.weather).*member = value;
    });
  };
  typed("high_c", &TypedWeather::high_c);
  typed("low_c", &TypedWeather::low_c);
  typed("wind_10m_m_s", &TypedWeather::wind_10m_m_s);
  return slips;
}

std::vector<Slip> practice_slips() {
  std::vector<Slip> slips;
  const auto number = [&slips](const std::string& field,
                               const std::function<void(Practice&, double)>& make) {
    add(slips, field, [make](Given& given, double value) { make(given.practice, value); });
  };
  number("operation.stamp.opens_psi",
         [](Practice& p, double v) { p.window(Operation::stamp).opens_psi = v; });
  number("cells.first_share", [](Practice& p, double v) { p.cells.first_fraction = v; });
  number("placing.chute_worker_h_per_m3",
         [](Practice& p, double v) { p.placing.chute_worker_h_per_m3 = v; });
  number("absorptance.grey", [](Practice& p, double v) { p.absorptance.grey = v; });
  number("joints.most_m", [](Practice& p, double v) { p.joints.max_m = v; });
  number("saw.speed_m_h", [](Practice& p, double v) { p.saw.speed_m_h = v; });
  number("set.wash_after_set_age_h", [](Practice& p, double v) { p.set.wash_after_set_age_h = v; });
  number("hours.go_home_min", [](Practice& p, double v) { p.crew.hours.go_home_min = v; });
  slips.push_back(
      {"operation.stamp", [](Given& g) { g.practice.window(Operation::stamp).closes_psi = 1.0; }});
  slips.push_back({"pieces.most", [](Given& g) { g.practice.crew.pieces.max = crowd; }});
  slips.push_back({"hands.", [](Given& g) { g.practice.crew.work[0].max_hands = 0; }});
  slips.push_back({"columns", [](Given& g) { g.solver.slab_spacing_m = 1e-9; }});
  slips.push_back({"columns", [](Given& g) { g.solver.early_step_s = nan; }});
  slips.push_back({"columns", [](Given& g) { g.solver.late_step_s = 1e-300; }});
  slips.push_back({"columns", [](Given& g) { g.solver.end_s = huge; }});
  return slips;
}

std::vector<Slip> all_slips() {
  std::vector<Slip> all;
  for (const auto& some :
       {zone_slips(), job_slips(), mix_slips(), weather_slips(), practice_slips()})
    all.insert(all.end(), some.begin(), some.end());
  return all;
}

/// What was computed before the mistake, for functions that take it besides the job.
struct Made {
  Given given = good();
  WeatherSeries series = *WeatherSeries::from_forecast(given.forecast).value;
  PourRun run = *run_pour(given.job, series, given.practice, given.solver).value;
  DayPlan plan = plan_day(given.job, run, given.practice);
};

void all_finite(const std::vector<double>& values) {
  for (const double value : values) REQUIRE(std::isfinite(value));
}

void check_run(const Parsed<PourRun>& run) {
  if (!run.ok()) return;
  for (const ColumnHistory& history : run.value->histories) {
    all_finite(history.surface_c);
    all_finite(history.set_age_work_h);
    all_finite(history.resistance_work_psi);
  }
}

void check_text(const std::string& text) {
  REQUIRE_FALSE(text.empty());
  const auto faults = number_faults(text);
  CAPTURE(text);
  REQUIRE(faults.empty());
}

/// A function of the library, called with the input and, if it needs more, with what was computed.
struct Entry {
  std::string name;
  std::function<void(const Given& given, const Made& made)> call;
};

std::vector<Entry> entries() {
  const auto report = [](const std::string& name, std::string (*make)(const PlannedPour&)) {
    return Entry{name, [make](const Given& g, const Made& m) {
                   check_text(make({g.job, g.forecast, g.practice, m.run, m.plan}));
                 }};
  };
  return {
      {"plan_order",
       [](const Given& g, const Made&) {
         const OrderPlan order = plan_order(g.job, g.practice.placing);
         REQUIRE(std::isfinite(order.ordered_m3));
       }},
      {"mix_model",
       [](const Given& g, const Made&) {
         const MixModel model = mix_model(g.job.mix, g.job.mix.admixtures);
         REQUIRE(std::isfinite(model.setting.shift_h));
       }},
      {"high_low_forecast",
       [](const Given& g, const Made&) {
         validate(
             high_low_forecast(std::get<TypedWeather>(g.job.weather), g.job.site, g.job.pour.date));
       }},
      {"from_forecast",
       [](const Given& g, const Made&) {
         const auto series = WeatherSeries::from_forecast(g.forecast);
         if (series.ok()) REQUIRE(std::isfinite(series.value->at(series.value->first()).air_c));
       }},
      {"run_pour",
       [](const Given& g, const Made& m) {
         check_run(run_pour(g.job, m.series, g.practice, g.solver));
       }},
      {"plan_day", [](const Given& g,
                      const Made& m) { static_cast<void>(plan_day(g.job, m.run, g.practice)); }},
      {"plan_cuts", [](const Given& g,
                       const Made& m) { static_cast<void>(plan_cuts(g.job, m.run, g.practice)); }},
      {"plan_crew",
       [](const Given& g, const Made& m) {
         static_cast<void>(plan_crew(g.job, m.plan.zones, m.plan.cuts, g.practice));
       }},
      report("json_plan", json_plan),
      report("page_plan", page_plan),
      report("csv_plan", csv_plan),
      report("calendar",
             [](const PlannedPour& facts) {
               return calendar(facts, {UtcTime(Date(2026, 5, 13)), {}});
             }),
      report("text_plan", [](const PlannedPour& facts) { return text_plan(facts, {}); }),
      report("text_saw", [](const PlannedPour& facts) { return text_saw(facts, {}); }),
      report("text_crew", [](const PlannedPour& facts) { return text_crew(facts, {}); })};
}

/// True where the call was refused.
bool refused(const Entry& entry, const Slip& slip, const Made& made) {
  Given given = made.given;
  slip.make(given);
  try {
    entry.call(given, made);
    return false;
  } catch (const std::invalid_argument& fault) {
    CAPTURE(std::string(fault.what()));
    CHECK(std::string_view(fault.what()).find(slip.field) != std::string_view::npos);
    return true;
  }
}

}  // namespace

TEST_CASE("what keeps the contract is taken") {
  const Made made;
  for (const Entry& entry : entries()) {
    CAPTURE(entry.name);
    CHECK_NOTHROW(entry.call(made.given, made));
  }
}

TEST_CASE("what breaks the contract is refused by the name of the field, or does not matter") {
  const Made made;
  const std::vector<Slip> slips = all_slips();
  CHECK(slips.size() > 250);
  for (const Slip& slip : slips) {
    CAPTURE(slip.field);
    std::size_t refusals = 0;
    for (const Entry& entry : entries()) {
      CAPTURE(entry.name);
      CHECK_NOTHROW(refusals += refused(entry, slip, made) ? 1 : 0);
    }
    // A forecast without hours gives a finding, not an exception.
    if (!slip.field.empty()) CHECK(refusals > 0);
  }
}

TEST_CASE("results are taken for their own job alone") {
  const Made made;
  Job other = made.given.job;
  other.zones.pop_back();
  other.pour.placing_sequence.pop_back();
  CHECK_THROWS_AS(plan_day(other, made.run, made.given.practice), std::invalid_argument);
  CHECK_THROWS_AS(json_plan({other, made.given.forecast, made.given.practice, made.run, made.plan}),
                  std::invalid_argument);
  CHECK_THROWS_AS(plan_day(made.given.job, PourRun{}, made.given.practice), std::invalid_argument);
}

TEST_CASE("whatever a job file may say can be planned") {
  constexpr std::uint64_t jobs = 300;
  std::size_t read = 0;
  for (std::uint64_t seed = 0; seed < jobs; ++seed) {
    CAPTURE(seed);
    ByteSource bytes = bytes_of_seed(seed);
    const Parsed<Job> job = read_job(random_job(bytes).toml);
    if (!job.ok()) continue;
    ++read;
    CHECK_NOTHROW(validate(*job.value));
  }
  CHECK(read > jobs / 3);
}

}  // namespace slabtide::test
