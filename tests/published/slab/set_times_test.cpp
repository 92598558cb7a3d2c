#include "slab/mix/set_estimate.h"

#include <array>
#include <limits>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"
#include "slab/mix/mix_model.h"
#include "slab/process/setting.h"
#include "slab/process/strength.h"
#include "slabtide/core/units.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_set_times {

namespace {

struct AshRow {
  const char* ash;
  AshClass ash_class;
  double fraction;
  double initial_h;
  double final_h;
};

constexpr double hm(int hours, int minutes) { return hours + minutes / 60.0; }

// 25 % ash, 517 lb/yd3, 73 °F.
constexpr auto ash_rows = std::to_array<AshRow>({{"none", AshClass::f, 0.00, hm(4, 15), hm(5, 30)},
                                                 {"A", AshClass::c, 0.25, hm(4, 30), hm(5, 35)},
                                                 {"B", AshClass::f, 0.25, hm(4, 40), hm(6, 15)},
                                                 {"C", AshClass::f, 0.25, hm(4, 25), hm(6, 15)},
                                                 {"D", AshClass::f, 0.25, hm(5, 5), hm(7, 15)},
                                                 {"E", AshClass::f, 0.25, hm(4, 25), hm(5, 50)},
                                                 {"F", AshClass::c, 0.25, hm(4, 25), hm(6, 0)},
                                                 {"G", AshClass::f, 0.25, hm(4, 55), hm(6, 30)},
                                                 {"H", AshClass::f, 0.25, hm(5, 10), hm(7, 10)},
                                                 {"I", AshClass::c, 0.25, hm(5, 0), hm(6, 50)},
                                                 {"J", AshClass::f, 0.25, hm(5, 10), hm(7, 40)}});

constexpr const char* gebler_klieger =
    "Gebler & Klieger 1986 (PCA RD089), in Design and Control of Concrete Mixtures";

}  // namespace

TEST_CASE("estimated set times beside the published ashes, one by one") {
  // The possible error of a test by ASTM C403: the coefficient of variation in its precision
  // statement, for one operator and laboratory, from memory.
  constexpr double initial_variation = 0.071;
  constexpr double final_variation = 0.047;
  Published initial{.what = "initial set of 25 % ash mixes",
                    .source = gebler_klieger,
                    .status = "from memory",
                    .unit = "min",
                    .because = "7.1 %, precision of ASTM C403 (from memory)"};
  Published final{.what = "final set of 25 % ash mixes",
                  .source = gebler_klieger,
                  .status = "from memory",
                  .unit = "min",
                  .because = "4.7 %, precision of ASTM C403 (from memory)"};
  for (const AshRow& row : ash_rows) {
    Mix mix;
    mix.ash_class = row.ash_class;
    mix.ash_fraction = row.fraction;
    const SetTimes times = estimated_set_times(mix);
    const std::string name =
        fmt::format("ash {} (class {})", row.ash, row.ash_class == AshClass::f ? 'F' : 'C');
    initial.tolerance = initial_variation * row.initial_h * 60.0;
    final.tolerance = final_variation * row.final_h * 60.0;
    check_row(initial, name, row.initial_h * 60.0, times.initial_h * 60.0);
    check_row(final, name, row.final_h * 60.0, times.final_h * 60.0);
  }
}

TEST_CASE("estimated set times beside the mean of each class") {
  // The estimate's terms for ash were set to these means, so both contain the scatter of the tests;
  // what remains is that the rows are given to five minutes.
  constexpr Published mean{.what = "set times, mean of a class of ash",
                           .source = gebler_klieger,
                           .status = "from memory",
                           .tolerance = 2.5,
                           .unit = "min",
                           .because = "rows told to 5 min"};
  for (const AshClass ash_class : {AshClass::f, AshClass::c}) {
    double initial_h = 0.0;
    double final_h = 0.0;
    int rows = 0;
    for (const AshRow& row : ash_rows) {
      if (row.ash_class != ash_class || row.fraction == 0.0) continue;
      initial_h += row.initial_h;
      final_h += row.final_h;
      ++rows;
    }
    Mix mix;
    mix.ash_class = ash_class;
    mix.ash_fraction = 0.25;
    const SetTimes times = estimated_set_times(mix);
    const std::string name = fmt::format("class {}", ash_class == AshClass::f ? 'F' : 'C');
    check_row(mean, name + ", initial set", initial_h / rows * 60.0, times.initial_h * 60.0);
    check_row(mean, name + ", final set", final_h / rows * 60.0, times.final_h * 60.0);
  }
}

namespace {

struct SetHours {
  double temperature_f;
  double hours;
  double half_digit_h;
};

// Given in whole hours, in hot weather in thirds; 6 h at 70 °F.
constexpr double whole_h = 0.5;
constexpr double third_h = 1.0 / 6.0;
constexpr auto rule_of_thumb = std::to_array<SetHours>({{100, 5.0 / 3.0, third_h},
                                                        {90, 8.0 / 3.0, third_h},
                                                        {80, 4, whole_h},
                                                        {60, 8, whole_h},
                                                        {50, 11, whole_h},
                                                        {40, 14, whole_h},
                                                        {30, 19, whole_h}});

}  // namespace

TEST_CASE("hours to set by temperature beside the rule of thumb") {
  constexpr const char* notes =
      "Penn State CE 584 notes, Use of Admixture and Its Effects on Setting Time";
  const double energy = setting_activation_energy_j_mol(0.0);
  const auto ratio_to_70 = [&](double f) {
    return set_rate(celsius_from_fahrenheit(70), energy) /
           set_rate(celsius_from_fahrenheit(f), energy);
  };
  constexpr double at_70_h = 6.0;
  for (const SetHours& row : rule_of_thumb) {
    check_row({.what = "hours to set by temperature",
               .source = notes,
               .tolerance = row.half_digit_h,
               .unit = "h where 70 °F takes 6"},
              fmt::format("{} °F", row.temperature_f), row.hours,
              at_70_h * ratio_to_70(row.temperature_f));
  }
}

TEST_CASE("slag delays by half an hour to one at 35 to 40 %") {
  for (const double percent : {35.0, 40.0}) {
    Mix mix;
    mix.slag_fraction = percent / 100.0;
    check_range({.what = "initial set later by slag",
                 .source = "ACI 233R",
                 .status = "from memory",
                 .unit = "min",
                 .because = given_as_range},
                fmt::format("{} % at 73 °F", percent), 30.0, 60.0,
                (estimated_set_times(mix).initial_h - estimated_set_times(Mix{}).initial_h) * 60.0);
  }
}

TEST_CASE("a third slower for each 10 °F colder, and 2.33 times from 70 to 40 °F") {
  const double energy = setting_activation_energy_j_mol(0.0);
  const auto times_slower = [&](double colder_f, double warmer_f) {
    return set_rate(celsius_from_fahrenheit(warmer_f), energy) /
           set_rate(celsius_from_fahrenheit(colder_f), energy);
  };
  for (const double warmer_f : {50.0, 60.0, 70.0, 80.0, 90.0}) {
    check_row({.what = "times slower for each 10 °F",
               .source = "a third more for each 10 °F colder",
               .status = "common practice, no source",
               .tolerance = 1.0 / 24.0,
               .because = "a third, neither a quarter nor a half"},
              fmt::format("{} to {} °F", warmer_f, warmer_f - 10.0), 4.0 / 3.0,
              times_slower(warmer_f - 10.0, warmer_f));
  }
  check_row({.what = "times slower at 40 than at 70 °F",
             .source = "Penn State CE 584 notes: 14 h against 6",
             .tolerance = 0.09,
             .because = "14 h told to the hour"},
            "14 over 6 h", 14.0 / 6.0, times_slower(40.0, 70.0));
}

TEST_CASE("strength at final set and at one day") {
  const MixModel model = mix_model(Mix{}, {});
  const double at_final = strength_psi(final_set_age_h(model.setting), model.strength);
  check_row({.what = "strength at final set",
             .source = "notes on ASTM C403: cylinders give about 100 psi at final set",
             .status = "published",
             .tolerance = 10.0,
             .unit = "psi",
             .because = "about, taken to a tenth"},
            "4000 psi mix at final set", 100.0, at_final);
  check_row({.what = "strength at one day",
             .source = "a quarter of f'c at one day",
             .status = "common practice, no source",
             .tolerance = 0.005,
             .unit = "of f'c",
             .because = "a quarter, taken to the hundredth"},
            "4000 psi mix at 24 h of 73 °F", 0.25, strength_psi(24.0, model.strength) / 4000.0);
  // Ours: the form of ASTM C1074 is fitted to reach the mean 28 days after it starts.
  CHECK(strength_psi(model.strength.start_set_age_h + 28.0 * 24.0, model.strength) ==
        doctest::Approx(5200.0).epsilon(1e-12));
}

TEST_CASE("strength of the first days beside that at 28 days, and f'c within the week") {
  Mix mix;
  mix.w_cm = 0.40;
  const MixModel model = mix_model(mix, {});
  const auto after = [&model](double days) { return strength_psi(24.0 * days, model.strength); };
  Published data{.what = "strength of the first days, of 28 days'",
                 .source = "Yeh's concrete compressive strength data set (UCI), plain mixes",
                 .tolerance = 0.0005,
                 .because = half_digit};
  check_row(data, "1 day, w/c 0.40", 0.287, after(1.0) / after(28.0));
  data.because = given_as_range;
  check_range(data, "3 days, w/c 0.40", 0.556, 0.59, after(3.0) / after(28.0));
  check_range({.what = "strength at 7 days, of f'c",
               .source = "Antunes 2022, CivilEng 3:51-65: f'c reached before 7 days",
               .because = given_as_range},
              "4000 psi mix at 73 °F", 1.0, std::numeric_limits<double>::infinity(),
              after(7.0) / 4000.0);
}

}  // namespace published_set_times
