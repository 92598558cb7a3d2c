#include "slab/column/column_solver.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <span>
#include <stdexcept>
#include <string>

#include <doctest/doctest.h>

#include "slab/mix/mix_model.h"
#include "slab/process/evaporation.h"
#include "slab/process/setting.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::fixtures;

namespace {

constexpr Day mild{.hours = 36.0};

/// A site with one mix, one place in the sun and one in the shade.
struct Place {
  explicit Place(const Day& day)
      : weather(day_weather(day)),
        sun(in_the_sun(weather, day.start_hour, 850.0)),
        shade(in_the_shade(weather, 0.6)),
        mix(mix_model(Mix{}, {})) {}
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;

  ColumnCase in_sun() const { return slab_on_gravel(mix, sun, 20.0); }
  ColumnCase in_shade() const { return slab_on_gravel(mix, shade, 20.0); }
  ColumnHistory solve(const ColumnCase& column, const SolverSettings& settings = {}) const {
    return solve_columns(std::array{column}, weather, settings)[0];
  }

  SiteWeather weather;
  CellExposure sun;
  CellExposure shade;
  MixModel mix;
};

double initial_set_s(const ColumnHistory& h) {
  return when_reached(h, h.resistance_middle_psi, initial_set_psi);
}

bool same(const ColumnHistory& a, const ColumnHistory& b) {
  return a.time_s == b.time_s && a.surface_c == b.surface_c && a.middle_c == b.middle_c &&
         a.mean_c == b.mean_c && a.gradient_c == b.gradient_c &&
         a.set_age_work_h == b.set_age_work_h && a.set_age_middle_h == b.set_age_middle_h &&
         a.resistance_top_psi == b.resistance_top_psi &&
         a.resistance_work_psi == b.resistance_work_psi &&
         a.resistance_deep_psi == b.resistance_deep_psi &&
         a.resistance_middle_psi == b.resistance_middle_psi && a.strength_psi == b.strength_psi &&
         a.evaporation_kg_m2_h == b.evaporation_kg_m2_h && a.bleed_kg_m2_h == b.bleed_kg_m2_h &&
         a.bleed_water_kg_m2 == b.bleed_water_kg_m2;
}

double value_at(const ColumnHistory& h, const std::vector<double>& values, double time_s) {
  const auto after = std::lower_bound(h.time_s.begin(), h.time_s.end(), time_s);
  return values[static_cast<std::size_t>(after - h.time_s.begin())];
}

std::string refusal(const Place& place, const std::function<void(ColumnCase&)>& spoil) {
  std::array cases{place.in_sun(), place.in_shade()};
  spoil(cases[1]);
  try {
    solve_columns(cases, place.weather, {});
  } catch (const std::invalid_argument& error) {
    return error.what();
  }
  return "accepted";
}

}  // namespace

TEST_CASE("a batch is the same to the bit on any number of threads, and in order") {
  const Place place(mild);
  std::vector<ColumnCase> cases;
  for (int i = 0; i < 60; ++i) {
    cases.push_back(i % 2 == 0 ? place.in_sun() : place.in_shade());
    cases.back().placed_s += 137.0 * i;
    cases.back().thickness_m += 0.002 * i;
    cases.back().formed_face = i % 5 == 4;
  }
  const auto on = [&](int threads) {
    SolverSettings settings;
    settings.threads = threads;
    return solve_columns(cases, place.weather, settings);
  };
  const auto one = on(1);
  REQUIRE(one.size() == cases.size());
  for (const int threads : {0, 2, 3, 7, 16}) {
    const auto more = on(threads);
    for (std::size_t i = 0; i < cases.size(); ++i) CHECK(same(one[i], more[i]));
  }
  for (std::size_t i = 0; i < cases.size(); ++i) {
    CHECK(one[i].time_s.front() == cases[i].placed_s);
    CHECK(same(one[i], place.solve(cases[i])));
  }
}

TEST_CASE("an empty batch is an empty answer") {
  const Place place(mild);
  CHECK(solve_columns({}, place.weather, {}).empty());
}

TEST_CASE("every vector has an entry for every instant, from placing to the end") {
  const Place place(mild);
  const ColumnHistory h = place.solve(place.in_sun());
  const std::size_t n = h.time_s.size();
  for (const auto* each : {&h.surface_c, &h.middle_c, &h.mean_c, &h.gradient_c, &h.set_age_work_h,
                           &h.set_age_middle_h, &h.resistance_top_psi, &h.resistance_work_psi,
                           &h.resistance_deep_psi, &h.resistance_middle_psi, &h.strength_psi,
                           &h.evaporation_kg_m2_h, &h.bleed_kg_m2_h, &h.bleed_water_kg_m2})
    CHECK(each->size() == n);
  CHECK(h.time_s.front() == 2100.0);
  CHECK(h.time_s.back() == doctest::Approx(place.weather.grid.end_s()));
}

TEST_CASE("entries come with every early step, one at final set, then up to every late step") {
  const SolverSettings usual;
  const Place place(mild);
  const ColumnHistory h = place.solve(place.in_sun());
  const double set_s = when_reached(h, h.resistance_middle_psi, final_set_psi);
  for (std::size_t i = 1; i + 1 < h.time_s.size(); ++i) {
    const double apart_s = h.time_s[i] - h.time_s[i - 1];
    if (h.time_s[i] < set_s) CHECK(apart_s == doctest::Approx(usual.early_step_s));
    CHECK(apart_s <= usual.late_step_s + 1e-6);
  }
  const auto after =
      std::find_if(h.time_s.begin(), h.time_s.end(), [&](double t) { return t >= set_s; });
  CHECK(*after - set_s < 2.0);
}

TEST_CASE("the end can be set") {
  const Place place(mild);
  SolverSettings settings;
  settings.end_s = 20000.0;
  CHECK(place.solve(place.in_sun(), settings).time_s.back() == doctest::Approx(20000.0));
}

TEST_CASE("concrete ages in the truck at its own temperature") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  column.batched_s = column.placed_s - 3600.0;
  const ColumnHistory h = place.solve(column);
  const double rate = set_rate(20.0, place.mix.setting.activation_energy_j_mol);
  CHECK(h.set_age_work_h.front() == doctest::Approx(rate * 1.0));
}

TEST_CASE("a slab in the sun sets before its twin in the shade") {
  const Place place(mild);
  CHECK(initial_set_s(place.solve(place.in_sun())) + 1800.0 <
        initial_set_s(place.solve(place.in_shade())));
}

TEST_CASE("sun warms the top over the bottom, the night turns that round") {
  const Place place(mild);
  const ColumnHistory h = place.solve(place.in_sun());
  CHECK(value_at(h, h.gradient_c, 5.5 * 3600.0) > 1.0);    // 12:30
  CHECK(value_at(h, h.gradient_c, 20.0 * 3600.0) < -0.5);  // 03:00
}

TEST_CASE("in hot wind and sun the top stiffens before the body") {
  const Place place({.high_c = 36.0, .low_c = 24.0, .dew_point_c = 20.0, .wind_slab_m_s = 1.0});
  const ColumnHistory h = place.solve(place.in_sun());
  const double print_s = when_reached(h, h.resistance_work_psi, 40.0);
  CHECK(value_at(h, h.resistance_top_psi, print_s) >
        1.1 * value_at(h, h.resistance_deep_psi, print_s));
}

TEST_CASE("evaporation at placing is the free-water rate at the surface temperature") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  const auto first_rate = [&] { return place.solve(column).evaporation_kg_m2_h.front(); };
  const double surface_c = place.solve(column).surface_c.front();
  const auto i = static_cast<std::size_t>(column.placed_s / place.weather.grid.step_s);
  CHECK(first_rate() ==
        doctest::Approx(menzel_evaporation_kg_m2_h(saturation_pressure_pa(surface_c),
                                                   place.weather.vapour_pressure_pa[i],
                                                   place.weather.wind_slab_m_s[i]))
            .epsilon(1e-5));
  const double likely = first_rate();
  column.evaporation_factor = 0.6;
  CHECK(first_rate() == doctest::Approx(0.6 * likely));
}

TEST_CASE("stronger convection keeps a sunny surface cooler") {
  const Place place(mild);
  ColumnCase column = place.in_sun();
  column.evaporation_factor = 0.0;  // a cooler top would stay wet, and dark, for longer
  const ColumnHistory likely = place.solve(column);
  column.convection_factor = 1.4;
  const ColumnHistory strong = place.solve(column);
  CHECK(*std::max_element(strong.surface_c.begin(), strong.surface_c.end()) <
        *std::max_element(likely.surface_c.begin(), likely.surface_c.end()) - 1.0);
}

TEST_CASE("however long it came in the truck, all bleed water comes after placing") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  CHECK(column.batched_s < column.placed_s);
  column.evaporation_factor = 0.0;
  const ColumnHistory h = place.solve(column);
  CHECK(h.bleed_water_kg_m2.back() ==
        doctest::Approx(0.8 * place.mix.bleed_kg_m2_per_mm * 100.0));  // over gravel
}

TEST_CASE("plastic stops evaporation while it lies") {
  const Place place(mild);
  ColumnCase column = place.in_sun();
  column.covers = {{7200.0, 14400.0, 0.0, true}};
  const ColumnHistory h = place.solve(column);
  for (std::size_t i = 1; i < h.time_s.size(); ++i) {
    // A step ends just after the plastic comes or goes, and tells what was until then.
    const bool under = h.time_s[i] > 7201.0 && h.time_s[i] <= 14401.0;
    CHECK((h.evaporation_kg_m2_h[i] == 0.0) == under);
    if (h.time_s[i] > 15000.0) break;
  }
}

TEST_CASE("a blanket over a cold night brings set forward") {
  const Place place({.high_c = 8.0, .low_c = -1.0, .dew_point_c = -4.0, .start_hour = 15.0});
  ColumnCase column = place.in_shade();
  const double bare_s = initial_set_s(place.solve(column));
  column.covers = {{3600.0, 1.0e6, 0.5, true}};
  const ColumnHistory h = place.solve(column);
  CHECK(initial_set_s(h) < bare_s - 1800.0);
}

TEST_CASE("blankets that cure lie from their set age on: dry below, and warm through the night") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  const ColumnHistory bare = place.solve(column);
  column.curing_cover_from_set_age_h = place.mix.setting.final_set_h + place.mix.setting.shift_h;
  column.curing_cover_m2k_w = 0.5;
  const ColumnHistory h = place.solve(column);
  const double laid_s = when_reached(h, h.resistance_middle_psi, final_set_psi);
  CHECK(laid_s == when_reached(bare, bare.resistance_middle_psi, final_set_psi));
  for (std::size_t i = 1; i < h.time_s.size(); ++i) {
    if (h.time_s[i] < laid_s - 1.0) CHECK(h.mean_c[i] == bare.mean_c[i]);
    if (h.time_s[i] > laid_s + 900.0) CHECK(h.evaporation_kg_m2_h[i] == 0.0);
  }
  CHECK(value_at(h, h.surface_c, 20.0 * 3600.0) >
        value_at(bare, bare.surface_c, 20.0 * 3600.0) + 4.0);
}

TEST_CASE("what comes up of the bleed water is the base's to say") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  column.evaporation_factor = 0.0;
  column.bleed_up_fraction = 0.5;
  CHECK(place.solve(column).bleed_water_kg_m2.back() ==
        doctest::Approx(0.5 * place.mix.bleed_kg_m2_per_mm * 100.0));
}

TEST_CASE("a warm base hastens set, wherever its heat lies") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  const double cold_s = initial_set_s(place.solve(column));
  column.ground = {{0.0, 40.0}, {0.3, 25.0}, {0.6, column.ground_c}};
  CHECK(initial_set_s(place.solve(column)) < cold_s - 900.0);
  column.ground = {{0.0, column.ground_c}, {0.6, column.ground_c}};
  CHECK(initial_set_s(place.solve(column)) == doctest::Approx(cold_s));
}

TEST_CASE("a curing film leaves a twentieth of the evaporation") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  const ColumnHistory bare = place.solve(column);
  column.curing_compound_from_set_age_h = 3.0;
  const ColumnHistory film = place.solve(column);
  const double on_s = when_reached(film, film.set_age_work_h, 3.0);
  CHECK(value_at(film, film.evaporation_kg_m2_h, on_s - 300.0) ==
        doctest::Approx(value_at(bare, bare.evaporation_kg_m2_h, on_s - 300.0)));
  const double after = value_at(film, film.evaporation_kg_m2_h, on_s + 300.0);
  CHECK(after > 0.0);
  CHECK(after < 0.07 * value_at(bare, bare.evaporation_kg_m2_h, on_s + 300.0));
}

TEST_CASE("an evaporation film leaves three fifths of the evaporation until the concrete sets") {
  const Place place(mild);
  ColumnCase column = place.in_shade();
  const ColumnHistory bare = place.solve(column);
  column.evaporation_film_to_set_age_h = 3.0;
  const ColumnHistory film = place.solve(column);
  CHECK(film.evaporation_kg_m2_h.front() ==
        doctest::Approx(0.6 * bare.evaporation_kg_m2_h.front()));
  // The surface stays a little warmer under it.
  CHECK(film.evaporation_kg_m2_h[1] < 0.65 * bare.evaporation_kg_m2_h[1]);
  CHECK(film.evaporation_kg_m2_h[1] > 0.6 * bare.evaporation_kg_m2_h[1]);
  const double off_s = when_reached(film, film.set_age_work_h, 3.0);
  CHECK(value_at(film, film.evaporation_kg_m2_h, off_s - 600.0) <
        0.7 * value_at(bare, bare.evaporation_kg_m2_h, off_s - 600.0));
  CHECK(value_at(film, film.evaporation_kg_m2_h, off_s + 600.0) >
        0.9 * value_at(bare, bare.evaporation_kg_m2_h, off_s + 600.0));
}

TEST_CASE("a formed face neither bleeds nor dries and knows no ground") {
  const Place place(mild);
  ColumnCase face = place.in_shade();
  face.formed_face = true;
  face.thickness_m = 0.15;
  const ColumnHistory h = place.solve(face);
  CHECK(*std::max_element(h.evaporation_kg_m2_h.begin(), h.evaporation_kg_m2_h.end()) == 0.0);
  CHECK(*std::max_element(h.bleed_water_kg_m2.begin(), h.bleed_water_kg_m2.end()) == 0.0);
  face.ground_c = 2.0;
  CHECK(same(h, place.solve(face)));
}

TEST_CASE("a shaded riser strips after the sunny top is ready") {
  const Place place(mild);
  ColumnCase face = place.in_shade();
  face.formed_face = true;
  face.thickness_m = 0.15;
  const ColumnHistory riser = place.solve(face);
  const ColumnHistory top = place.solve(place.in_sun());
  CHECK(when_reached(riser, riser.resistance_work_psi, 10.0) >
        when_reached(top, top.resistance_work_psi, 10.0));
}

TEST_CASE("a column that does not set within the forecast is followed to its end") {
  const Place place({.high_c = 3.0, .low_c = -2.0, .dew_point_c = -4.0, .hours = 8.0});
  ColumnCase column = place.in_shade();
  column.concrete_c = 5.0;
  column.ground_c = 1.0;
  const ColumnHistory h = place.solve(column);
  CHECK(h.resistance_middle_psi.back() < initial_set_psi);
  CHECK(h.time_s.back() == doctest::Approx(8.0 * 3600.0));
}

TEST_CASE("what is no case is refused by its number") {
  const Place place(mild);
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(refusal(place, [](ColumnCase&) {}) == "accepted");
  CHECK(refusal(place, [](ColumnCase& c) { c.mix = nullptr; }) ==
        "column case 1: no mix or no exposure");
  CHECK(refusal(place, [](ColumnCase& c) { c.thickness_m = -0.1; }) ==
        "column case 1: thickness is not above 0");
  CHECK(refusal(place, [&](ColumnCase& c) { c.thickness_m = nan; }) ==
        "column case 1: thickness is not above 0");
  CHECK(refusal(place, [](ColumnCase& c) { c.placed_s = 1.0e9; }) ==
        "column case 1: placed outside the time to solve");
  CHECK(refusal(place, [](ColumnCase& c) { c.batched_s = c.placed_s + 1.0; }) ==
        "column case 1: batched after placing");
  CHECK(refusal(place, [&](ColumnCase& c) { c.concrete_c = nan; }) ==
        "column case 1: concrete or ground temperature is not finite");
  CHECK(refusal(place, [](ColumnCase& c) {
          c.ground = {{0.1, 20.0}, {0.1, 21.0}};
        }) == "column case 1: the temperatures below do not go down point by point");
  CHECK(refusal(place, [](ColumnCase& c) { c.bleed_up_fraction = 1.1; }) ==
        "column case 1: what comes up of the bleed water is not a share");
  CHECK(refusal(place, [](ColumnCase& c) { c.curing_cover_m2k_w = -1.0; }) ==
        "column case 1: a cover's resistance is below 0");
  CHECK(refusal(place, [](ColumnCase& c) { c.absorptance = 1.2; }) ==
        "column case 1: absorptance is not a share");
  CHECK(refusal(place, [](ColumnCase& c) { c.convection_factor = -1.0; }) ==
        "column case 1: a factor is below 0");
  CHECK(refusal(place, [](ColumnCase& c) {
          c.covers = {{0.0, 1.0, -1.0, true}};
        }) == "column case 1: a cover's resistance is below 0");
  CHECK(refusal(place, [](ColumnCase& c) {
          c.below.push_back({0.0, {1.0, 1.0e6}});
        }) == "column case 1: a layer below has no thickness or no material");
}

TEST_CASE("an exposure or a mix that does not fit is refused") {
  const Place place(mild);
  CellExposure shorter = place.shade;
  shorter.shortwave_w_m2.pop_back();
  CHECK(refusal(place, [&](ColumnCase& c) { c.exposure = &shorter; }) ==
        "column case 1: the exposure lacks a value at an instant of the weather grid");
  CellExposure beyond = place.shade;
  beyond.sky_view = 1.5;
  CHECK(refusal(place, [&](ColumnCase& c) { c.exposure = &beyond; }) ==
        "column case 1: sky view is not a share");
  MixModel backwards = place.mix;
  backwards.setting.final_set_h = 3.0;
  CHECK(refusal(place, [&](ColumnCase& c) { c.mix = &backwards; }) ==
        "column case 1: final set does not come after initial set");
}

TEST_CASE("weather and settings that cannot be solved are refused") {
  Place place(mild);
  SolverSettings settings;
  settings.early_step_s = 0.0;
  CHECK_THROWS_AS(place.solve(place.in_sun(), settings), std::invalid_argument);
  settings = {};
  settings.slab_spacing_m = 0.0;
  CHECK_THROWS_AS(place.solve(place.in_sun(), settings), std::invalid_argument);
  settings = {};
  settings.end_s = 1.0e9;
  CHECK_THROWS_AS(place.solve(place.in_sun(), settings), std::invalid_argument);
  settings = {};
  settings.threads = -1;
  CHECK_THROWS_AS(place.solve(place.in_sun(), settings), std::invalid_argument);
  place.weather.air_c[3] = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(place.solve(place.in_sun()), std::invalid_argument);
}
