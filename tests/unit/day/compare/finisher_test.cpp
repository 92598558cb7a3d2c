#include <algorithm>
#include <functional>
#include <set>
#include <string>
#include <utility>

#include <doctest/doctest.h>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "slabtide/day/compare/advice.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/job/reading/read_job.h"
#include "support/planned_day.h"

// Thirteen jobs of our own, and for each what an experienced finisher would choose, on the likely
// day as over days drawn. All of it is common practice without a source, and was written down
// before the comparison was run on them.

namespace slabtide {

namespace {

using test::PlannedDay;

/// Enough to tell a day in ten; more take time and change no first choice.
constexpr std::size_t days_drawn = 40;

/// What a choice does, as a finisher would say it.
enum class Move {
  nothing,
  another_day,
  earlier,
  later,
  retard,
  accelerate,
  cooler,
  warmer,
  trucks,
  order,
  more_hands,
  fewer_hands,
  shade,
  windbreak,
  film,
  blankets,
  plastic,
  saw
};

void add_admixture_moves(const OptionNote& change, std::set<Move>& moves) {
  const auto add = [&moves](const std::vector<Admixture>& list) {
    for (const Admixture& one : list) {
      const bool slows =
          one.kind == AdmixtureKind::retarder || one.kind == AdmixtureKind::stabiliser;
      moves.insert(slows ? Move::retard : Move::accelerate);
    }
  };
  if (change.admixtures) add(*change.admixtures);
  for (const LoadNote& load : change.loads) add(load.admixtures);
}

std::set<Move> moves_of(const Choice& choice, const Job& ordered) {
  std::set<Move> moves;
  if (!choice.change || choice.kind == ChoiceKind::as_ordered) return {Move::nothing};
  const OptionNote& change = *choice.change;
  add_admixture_moves(change, moves);
  const auto add_if = [&moves](bool made, Move move) {
    if (made) moves.insert(move);
  };
  add_if(change.start_shift_min && *change.start_shift_min < 0.0, Move::earlier);
  add_if(change.start_shift_min && *change.start_shift_min > 0.0, Move::later);
  add_if(change.finishers && *change.finishers > ordered.crew.finishers, Move::more_hands);
  add_if(change.finishers && *change.finishers < ordered.crew.finishers, Move::fewer_hands);
  add_if(change.concrete_c && choice.label.find("cooler") != std::string::npos, Move::cooler);
  add_if(change.concrete_c && choice.label.find("warmer") != std::string::npos, Move::warmer);
  // A retarder in the last half of one load takes two trucks, and is no other choice for that.
  add_if(
      (change.load_size_m3 && !change.last_loads) || change.truck_spacing_min || change.own_truck,
      Move::trucks);
  add_if(!change.placing_sequence.empty(), Move::order);
  add_if(!change.shaded_zones.empty(), Move::shade);
  add_if(change.wind_ratio.has_value(), Move::windbreak);
  add_if(change.evaporation_film.has_value(), Move::film);
  add_if(change.curing == CuringKind::blanket || change.curing_blanket_m2k_w, Move::blankets);
  add_if(change.curing == CuringKind::plastic, Move::plastic);
  add_if(!change.saws.empty(), Move::saw);
  return moves;
}

/// A job, and the moves that a finisher would accept: all of the first choice's must be among
/// `any`, and one of `must` if there are some.
struct Trade {
  std::string name;
  std::string toml;
  std::set<Move> must;
  std::set<Move> any;
  std::function<void(Forecast&)> weather = {};
};

/// Where and when, and how warm: figures as a job file has them.
struct Setting {
  std::string place;  ///< latitude, longitude and time zone, as lines
  std::string date;
  std::string start;
  double high_f, low_f, next_low_f, dew_f, wind_mph, concrete_f;
  int finishers;
  std::string pour = {};  ///< more lines of [pour]
  std::string aggregate = "limestone";
};

constexpr const char* desert =
    "latitude = 33.4\nlongitude = -112.0\ntime_zone = \"America/Phoenix\"";
constexpr const char* north = "latitude = 44.9\nlongitude = -93.3\ntime_zone = \"America/Chicago\"";
constexpr const char* plains =
    "latitude = 37.7\nlongitude = -97.3\ntime_zone = \"America/Chicago\"";

std::string job_text(const Setting& at, const std::string& rest) {
  return fmt::format(R"(name = "a trade job"
[site]
name = "site"
{}
wind_setting = "yard"
[pour]
date = {}
start = "{}"
{}
[weather]
high = {}
low = {}
next_low = {}
dew_point = {}
wind = {}
cloud = 10
[mix]
cementitious = 564
w_cm = 0.45
strength = 4000
aggregate = "{}"
concrete_temperature = {}
[crew]
finishers = {}
{})",
                     at.place, at.date, at.start, at.pour, at.high_f, at.low_f, at.next_low_f,
                     at.dew_f, at.wind_mph, at.aggregate, at.concrete_f, at.finishers, rest);
}

/// A rectangle in feet, its corner at (x, y).
std::string zone_text(const char* name, double x_ft, double y_ft, double width_ft, double depth_ft,
                      const char* finish, const char* more = "") {
  return fmt::format(R"([[zone]]
name = "{0}"
outline = [[{1}, {2}], [{3}, {2}], [{3}, {4}], [{1}, {4}]]
thickness = 4
base = "gravel"
base_depth = 4
finish = "{5}"
{6}
)",
                     name, x_ft, y_ft, x_ft + width_ft, y_ft + depth_ft, finish, more);
}

constexpr const char* early_saw = "saws = [\"early-entry\"]";

/// What slows or shortens a hot day's race.
const std::set<Move> against_heat{Move::earlier,    Move::retard, Move::cooler, Move::trucks,
                                  Move::more_hands, Move::shade,  Move::film,   Move::order};

Trade hot_desert() {
  return {"a stamped patio at 108 in the desert",
          job_text({desert, "2026-07-08", "06:00", 108, 84, 84, 55, 6, 92, 4, early_saw},
                   zone_text("patio", 0, 0, 24, 20, "stamp", "colour = \"tan\"")),
          {Move::earlier, Move::cooler, Move::retard},
          against_heat};
}

Trade frost() {
  return {"a broomed drive before the first frost",
          job_text({north, "2026-10-28", "09:00", 46, 30, 20, 24, 6, 58, 3, early_saw},
                   zone_text("drive", 0, 0, 20, 30, "broom")),
          {Move::blankets},
          {Move::blankets, Move::warmer, Move::accelerate, Move::earlier}};
}

/// The night is 16 °F: hot concrete alone does not carry a thin slab through it.
Trade hard_frost() {
  return {"a porch and its steps before a night of 16",
          job_text({north, "2026-11-10", "07:00", 64, 36, 16, 24, 6, 55, 3, early_saw},
                   zone_text("porch", 0, 0, 10, 8, "broom") +
                       "[[zone.face]]\nlength = 10\nheight = 7\nfacing = \"south\"\nat = [5, 0]\n" +
                       zone_text("steps", 2, -3, 6, 3, "broom") +
                       "[[zone.face]]\nlength = 6\nheight = 7\nfacing = \"south\"\nat = [5, -3]\n"),
          {Move::blankets, Move::another_day},
          {Move::blankets, Move::another_day, Move::warmer, Move::accelerate, Move::earlier}};
}

Trade windy_dry() {
  return {"a broomed slab in a dry wind",
          job_text({plains, "2026-04-16", "10:00", 74, 48, 46, 22, 24, 68, 4, early_saw},
                   zone_text("pad", 0, 0, 24, 24, "broom")),
          {Move::windbreak, Move::film, Move::earlier},
          {Move::windbreak, Move::film, Move::earlier, Move::shade, Move::cooler}};
}

Trade rain_at_noon() {
  return {"a patio with rain from noon to two",
          job_text({north, "2026-06-04", "08:00", 74, 58, 58, 56, 6, 68, 4, early_saw},
                   zone_text("patio", 0, 0, 20, 16, "stamp")),
          {Move::another_day, Move::later, Move::earlier, Move::accelerate},
          {Move::another_day, Move::later, Move::earlier, Move::accelerate, Move::warmer,
           Move::more_hands},
          [](Forecast& forecast) {
            for (ForecastHour& hour : forecast.hours) {
              const auto day = UtcTime(Date(2026, 6, 4));
              const double h = seconds_between(day, hour.at) / seconds_per_hour;
              const bool wet = h >= 17.0 && h < 19.0;  // noon to two in Chicago
              hour.rain_chance = wet ? 0.8 : 0.05;
              hour.rain_mm = wet ? 3.0 : 0.0;
            }
          }};
}

Trade two_short_loads() {
  return {"six yards of stamping by three on a warm day",
          job_text({plains, "2026-05-27", "08:00", 84, 62, 62, 58, 8, 76, 3, early_saw},
                   zone_text("patio", 0, 0, 24, 18, "stamp")),
          {},
          against_heat};
}

Trade long_drive() {
  return {"a long stamped drive by six on a hot day",
          job_text({plains, "2026-07-02", "07:00", 92, 70, 70, 62, 8, 84, 6, early_saw},
                   zone_text("drive", 0, 0, 16, 50, "stamp")),
          {Move::retard, Move::more_hands, Move::trucks, Move::earlier, Move::cooler},
          against_heat};
}

Trade shaded_court() {
  return {"a shaded court that sets into the evening",
          job_text({north, "2026-10-05", "15:00", 58, 42, 42, 40, 4, 60, 3, early_saw},
                   zone_text("court", 0, 0, 16, 16, "trowel", "shaded = true")),
          {Move::earlier, Move::accelerate, Move::warmer},
          {Move::earlier, Move::accelerate, Move::warmer}};
}

Trade steps() {
  return {"a stoop of steps and a landing on a mild day",
          job_text({plains, "2026-05-06", "08:00", 68, 52, 52, 50, 4, 66, 3, early_saw},
                   zone_text("stoop", 0, 0, 10, 6, "broom") +
                       "[[zone.face]]\nlength = 10\nheight = 7\nfacing = \"south\"\nat = [5, 0]\n"
                       "[[zone.face]]\nlength = 6\nheight = 7\nfacing = \"west\"\nat = [0, 3]\n"),
          {},
          {Move::nothing, Move::earlier, Move::fewer_hands}};
}

Trade several_sites() {
  return {"three pads by wheelbarrow on a warm day",
          job_text({plains, "2026-06-11", "07:00", 88, 66, 66, 60, 8, 80, 3,
                    "saws = [\"early-entry\"]\nhauling = \"wheelbarrow\"\nhaul_distance = 100"},
                   zone_text("north pad", 0, 200, 12, 12, "stamp") +
                       zone_text("middle pad", 150, 100, 12, 12, "stamp") +
                       zone_text("south pad", 300, 0, 12, 12, "broom")),
          {},
          against_heat};
}

Trade mild() {
  return {"a small broomed walk on a mild day",
          job_text({plains, "2026-05-12", "08:00", 70, 54, 54, 52, 4, 68, 3, early_saw},
                   zone_text("walk", 0, 0, 20, 4, "broom")),
          {},
          {Move::nothing}};
}

Trade wet_saw_alone() {
  return {"a slab tied to a wall with a wet saw alone before a cold night",
          job_text({desert, "2026-11-05", "10:00", 84, 46, 40, 20, 6, 70, 6, "saws = [\"wet\"]",
                    "quartzite"},
                   zone_text("slab", 0, 0, 24, 16, "broom", "tied = true")),
          {Move::saw, Move::blankets, Move::plastic, Move::earlier},
          {Move::saw, Move::blankets, Move::plastic, Move::earlier, Move::film, Move::windbreak,
           Move::shade}};
}

Trade concrete_too_hot() {
  return {"concrete at 98 from a hot plant",
          job_text({desert, "2026-08-12", "05:30", 104, 82, 82, 60, 5, 98, 4, early_saw},
                   zone_text("pad", 0, 0, 16, 16, "broom")),
          {Move::cooler},
          against_heat};
}

std::set<Move> first_choice(const Comparison& comparison, const Job& ordered) {
  if (comparison.not_that_day()) return {Move::another_day};
  return moves_of(comparison.choices[comparison.best].choice, ordered);
}

bool overlaps(const std::set<Move>& a, const std::set<Move>& b) {
  return std::any_of(a.begin(), a.end(), [&b](Move move) { return b.contains(move); });
}

/// The first choice, and what plan and comparison tell of the job as ordered, with `days` drawn or,
/// where it is null, on the likely day.
void check_choice(const Trade& trade, const PlannedDay& day, const Ensemble* days) {
  INFO(std::string(days == nullptr ? "on the likely day" : "over days drawn"));
  PlannedPour pour = day.pour();
  if (days != nullptr) pour.plan = with_bands(std::move(pour.plan), day.job(), *days);
  CompareSettings settings;
  settings.ensemble = days;
  const Comparison comparison = compare_choices(pour, settings);
  const Advice advice = advise(day.job(), comparison, {}, day.practice().compare);
  MESSAGE(trade.name << std::string(days == nullptr ? "" : ", days drawn") << ": "
                     << comparison.choices[comparison.best].choice.label << ". " << advice.order
                     << " " << advice.why);
  const std::set<Move> first = first_choice(comparison, day.job());
  CHECK(std::includes(trade.any.begin(), trade.any.end(), first.begin(), first.end()));
  if (!trade.must.empty()) CHECK(overlaps(first, trade.must));
  // Plan and comparison tell the same of the job as ordered.
  const ComparedChoice& ordered = comparison.choices.front();
  CHECK(ordered.figures.judgement.verdict == judge(pour.plan.cautions).verdict);
  if (ordered.figures.stops > 0) CHECK(comparison.best + comparison.not_that_day() != 0);
}

void check_trade(const Trade& trade) {
  const Parsed<Job> job = read_job(trade.toml);
  INFO(trade.name);
  INFO(render_all(job.diagnostics, "job", trade.toml));
  REQUIRE(job.ok());
  Forecast forecast = PlannedDay::forecast_of(*job.value);
  if (trade.weather) trade.weather(forecast);
  const PlannedDay day(*job.value, forecast);
  check_choice(trade, day, nullptr);
  const Ensemble days = sampled_days(day.pour(), {days_drawn, 0, {}});
  check_choice(trade, day, &days);
}

}  // namespace

TEST_CASE("against heat") {
  for (const Trade& trade : {hot_desert(), long_drive(), two_short_loads(), concrete_too_hot()}) {
    check_trade(trade);
  }
}

TEST_CASE("against frost, wind, rain and the night") {
  for (const Trade& trade : {frost(), hard_frost(), windy_dry(), rain_at_noon(), wet_saw_alone()}) {
    check_trade(trade);
  }
}

TEST_CASE("small and scattered work") {
  for (const Trade& trade : {shaded_court(), steps(), several_sites(), mild()}) {
    check_trade(trade);
  }
}

}  // namespace slabtide
