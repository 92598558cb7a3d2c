#include <algorithm>
#include <array>
#include <cstddef>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"
#include "slabtide/core/units.h"
#include "slabtide/slab/mix/mix_model.h"
#include "slabtide/slab/process/setting.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::fixtures;
using namespace slabtide::test;

// The wait from placing to a 1/4 in print with the bleed water gone: a 4 in slab, concrete,
// ground, air and surroundings all at one temperature, in the shade, air all but still. The
// source gives neither humidity, air movement nor air content: those are ours.

namespace {

struct Row {
  double temperature_f;
  double hours;
  double print_tolerance_min;
  double sheen_tolerance_min;
};

constexpr auto rows = std::to_array<Row>(
    {{50.0, 4.25, 50.0, 50.0}, {70.0, 2.75, 25.0, 20.0}, {90.0, 1.75, 25.0, 20.0}});

constexpr double print_psi = 40.0;  // ours, within 30 to 100

constexpr Published position_statement{
    .what = "wait to a 1/4 in print",
    .source =
        "ASCC Position Statement 15, in The Cost of Waiting, Concrete Construction, June 2000",
    .status = "published",
    .tolerance = 0.0,
    .unit = "min"};

struct Setting {
  double humidity_share;
  double wind_m_s;
  double air_share;  // of the mix
};

struct Wait {
  double print_h;
  double initial_set_h;
  double sheen_gone_h;  // no later than initial set
};

/// From when on the film of free water stays under what shines; 0 where it never came.
double film_gone_h(const ColumnHistory& h, double placed_s) {
  constexpr double film_gone_kg_m2 = 0.05;
  double gone_h = 0.0;
  for (std::size_t i = 0; i < h.time_s.size(); ++i)
    if (h.film_kg_m2[i] > film_gone_kg_m2) gone_h = (h.time_s[i] - placed_s) / 3600.0;
  return gone_h;
}

Wait wait_at(double temperature_f, const Setting& setting) {
  const double c = celsius_from_fahrenheit(temperature_f);
  const SiteWeather weather = steady_weather({.air_c = c,
                                              .humidity_share = setting.humidity_share,
                                              .wind_slab_m_s = setting.wind_m_s,
                                              .hours = 16.0});
  const CellExposure shade = in_the_shade(weather, 1.0);
  Mix ordered;
  ordered.air_share = setting.air_share;
  const MixModel mix = mix_model(ordered, {});
  const ColumnCase column = slab_on_gravel(mix, shade, c, m_from_in(4.0));
  const ColumnHistory h = solve_columns(std::array{column}, weather, {})[0];
  const auto hours = [&](double at_s) { return (at_s - column.placed_s) / 3600.0; };
  Wait wait{.print_h = hours(when_reached(h, h.resistance_work_psi, print_psi)),
            .initial_set_h = hours(when_reached(h, h.resistance_middle_psi, initial_set_psi)),
            .sheen_gone_h = 0.0};
  wait.sheen_gone_h = std::min(film_gone_h(h, column.placed_s), wait.initial_set_h);
  return wait;
}

}  // namespace

TEST_CASE("the wait to a quarter inch print at 50, 70 and 90 °F") {
  for (const Row& row : rows) {
    const Wait wait = wait_at(
        row.temperature_f, {.humidity_share = 0.6, .wind_m_s = 0.3, .air_share = Mix{}.air_share});
    Published source = position_statement;
    source.tolerance = row.print_tolerance_min;
    check_row(source, fmt::format("{} °F", row.temperature_f), row.hours * 60.0,
              wait.print_h * 60.0);
    // In still, moist air the film of a mix without entrained air outlasts the print: shown.
    MESSAGE(fmt::format("sheen gone at {} °F: {:+.0f} min against the published wait",
                        row.temperature_f, (wait.sheen_gone_h - row.hours) * 60.0));
  }
}

TEST_CASE("print and sheen gone together, air-entrained mix in dry still air") {
  for (const Row& row : rows) {
    const Wait wait =
        wait_at(row.temperature_f, {.humidity_share = 0.4, .wind_m_s = 0.5, .air_share = 0.06});
    Published source = position_statement;
    source.what = "wait to a print and no sheen";
    source.tolerance = row.sheen_tolerance_min;
    check_row(source, fmt::format("{} °F", row.temperature_f), row.hours * 60.0,
              std::max(wait.print_h, wait.sheen_gone_h) * 60.0);
  }
}
