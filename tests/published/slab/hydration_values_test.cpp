#include "slab/process/hydration.h"

#include <array>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_hydration_values {

namespace {

struct Row {
  double w_cm;
  double ash_fraction;
  double ash_cao;
  double slag_fraction;
  double tau_h;
  double beta;
  double alpha_u;
  double heat_j_g;
  double energy_j_mol;
};

// The equations of Schindler & Folliard 2005 and Schindler 2004 with this project's default
// cement, evaluated independently: these test the coding, not the coefficients.
constexpr auto rows =
    std::to_array<Row>({{0.45, 0.00, 0.00, 0.00, 14.897, 0.6711, 0.7204, 485.7, 45218},
                        {0.50, 0.00, 0.00, 0.00, 14.897, 0.6711, 0.7428, 485.7, 45218},
                        {0.45, 0.20, 0.05, 0.00, 16.381, 0.6711, 0.8204, 406.6, 36909},
                        {0.45, 0.20, 0.25, 0.00, 23.954, 0.6711, 0.8204, 478.6, 41657},
                        {0.45, 0.00, 0.00, 0.40, 35.729, 0.5181, 0.8404, 475.8, 52452}});

Published to_last_digit(std::string_view what, double tolerance, std::string_view unit) {
  return {.what = what,
          .source = "Schindler & Folliard 2005, Schindler 2004, evaluated independently",
          .status = "from memory",
          .tolerance = tolerance,
          .unit = unit};
}

}  // namespace

TEST_CASE("hydration parameters are those of an independent evaluation") {
  for (const Row& row : rows) {
    Mix mix;
    mix.w_cm = row.w_cm;
    mix.ash_fraction = row.ash_fraction;
    mix.slag_fraction = row.slag_fraction;
    const HydrationParameters h = hydration_parameters(mix, row.ash_cao);
    const std::string name = fmt::format("w/cm {}, ash {} (CaO {}), slag {}", row.w_cm,
                                         row.ash_fraction, row.ash_cao, row.slag_fraction);
    check_row(to_last_digit("hydration, tau", 0.0005, "h"), name, row.tau_h, h.tau_h);
    check_row(to_last_digit("hydration, beta", 0.00005, ""), name, row.beta, h.beta);
    check_row(to_last_digit("hydration, alpha_u", 0.00005, ""), name, row.alpha_u, h.alpha_u);
    check_row(to_last_digit("hydration, heat", 0.05, "J/g"), name, row.heat_j_g,
              h.ultimate_heat_j_g);
    check_row(to_last_digit("hydration, activation energy", 0.5, "J/mol"), name, row.energy_j_mol,
              h.activation_energy_j_mol);
  }
}

}  // namespace published_hydration_values
