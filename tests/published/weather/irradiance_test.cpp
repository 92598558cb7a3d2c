#include "slabtide/weather/irradiance.h"

#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {

struct Row {
  double argument;
  double expected;
};

}  // namespace

TEST_CASE("clear sky by Haurwitz") {
  // Haurwitz 1945, 1098 cosZ exp(-0.059/cosZ): formula published, values evaluated independently to
  // 0.01 W/m2. Tests the coding. Seen: under 0.005.
  for (const Row& row : {Row{1.0, 1035.09}, Row{0.5, 487.89}, Row{0.1, 60.87}}) {
    const double off = clear_sky_w_m2(row.argument) - row.expected;
    MESSAGE("clear sky at cosZ ", row.argument, ": off by ", off, " W/m2");
    CHECK(std::abs(off) <= 0.005);
  }
}

TEST_CASE("clouds by Kasten & Czeplak") {
  // Kasten & Czeplak 1980, 1 - 0.75 N^3.4: published; evaluated independently to 0.0001.
  for (const Row& row : {Row{0.0, 1.0}, Row{0.5, 0.9290}, Row{1.0, 0.25}})
    CHECK(std::abs(cloud_transmission(row.argument) - row.expected) <= 0.00005);
}

TEST_CASE("the sun outside the air at perihelion and aphelion") {
  // 1361/r² with r 0.98329 and 1.01671 au: 1408 and 1317 W/m2, published solar constant.
  CHECK(extraterrestrial_w_m2(1.0, 0.98329) == doctest::Approx(1407.7).epsilon(1e-4));
  CHECK(extraterrestrial_w_m2(1.0, 1.01671) == doctest::Approx(1316.6).epsilon(1e-4));
}

TEST_CASE("sky light's share by Erbs, Klein & Duffie") {
  // Published polynomial, evaluated independently to 0.00001.
  for (const Row& row : {Row{0.1, 0.9910}, Row{0.5, 0.65915}, Row{0.7, 0.24398}, Row{0.9, 0.165}})
    CHECK(std::abs(diffuse_share(row.argument) - row.expected) <= 0.000005);
}

TEST_CASE("Erbs's branches meet") {
  // The published coefficients leave steps of 0.00027 at both joints.
  for (const double joint : {0.22, 0.8}) {
    const double step = diffuse_share(joint + 1e-9) - diffuse_share(joint);
    MESSAGE("step at a clearness of ", joint, ": ", step);
    CHECK(std::abs(step) <= 0.0003);
  }
}
