#include "weather/sky/irradiance.h"

#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_irradiance {

namespace {

struct Row {
  double argument;
  double expected;
};

}  // namespace

TEST_CASE("clear sky by Haurwitz") {
  // 1098 cosZ exp(-0.059/cosZ): tests the coding.
  constexpr Published haurwitz{.what = "sun on level ground under a clear sky",
                               .source = "Haurwitz 1945, evaluated independently",
                               .tolerance = 0.005,
                               .unit = "W/m²"};
  for (const Row& row : {Row{1.0, 1035.09}, Row{0.5, 487.89}, Row{0.1, 60.87}}) {
    check_row(haurwitz, fmt::format("cosZ {:g}", row.argument), row.expected,
              clear_sky_w_m2(row.argument));
  }
}

TEST_CASE("clouds by Kasten & Czeplak") {
  // 1 - 0.75 N^3.4: tests the coding.
  constexpr Published clouds{.what = "what clouds let through",
                             .source = "Kasten & Czeplak 1980, evaluated independently",
                             .tolerance = 0.00005};
  for (const Row& row : {Row{0.0, 1.0}, Row{0.5, 0.9290}, Row{1.0, 0.25}}) {
    check_row(clouds, fmt::format("cloud {:g}", row.argument), row.expected,
              cloud_transmission(row.argument));
  }
}

TEST_CASE("the sun outside the air at perihelion and aphelion") {
  constexpr Published outside{.what = "sun outside the air",
                              .source = "1361 W/m² over the distance in au squared",
                              .tolerance = 0.05,
                              .unit = "W/m²"};
  check_row(outside, "perihelion, 0.98329 au", 1407.7, extraterrestrial_w_m2(1.0, 0.98329));
  check_row(outside, "aphelion, 1.01671 au", 1316.6, extraterrestrial_w_m2(1.0, 1.01671));
}

TEST_CASE("sky light's share by Erbs, Klein & Duffie") {
  constexpr Published erbs{.what = "sky light's share",
                           .source = "Erbs, Klein & Duffie 1982, evaluated independently",
                           .tolerance = 0.000005};
  for (const Row& row : {Row{0.1, 0.9910}, Row{0.5, 0.65915}, Row{0.7, 0.24398}, Row{0.9, 0.165}}) {
    check_row(erbs, fmt::format("clearness {:g}", row.argument), row.expected,
              diffuse_fraction(row.argument));
  }
}

TEST_CASE("Erbs's branches meet") {
  // The published coefficients leave steps of 0.00027 at both joints.
  for (const double joint : {0.22, 0.8}) {
    const double step = diffuse_fraction(joint + 1e-9) - diffuse_fraction(joint);
    MESSAGE("step at a clearness of ", joint, ": ", step);
    CHECK(std::abs(step) <= 0.0003);
  }
}

}  // namespace published_irradiance
