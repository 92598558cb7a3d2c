#include "slab/mix/mix_model.h"

#include <algorithm>
#include <limits>
#include <stdexcept>
#include <string>
#include <string_view>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {

bool noted(const MixModel& model, std::string_view words) {
  return std::any_of(model.notes.begin(), model.notes.end(), [&](const std::string& note) {
    return note.find(words) != std::string::npos;
  });
}

Admixture retarder(double hours) {
  Admixture admixture;
  admixture.shift_h = hours;
  return admixture;
}

void check_refused(void (*spoil)(Mix&)) {
  Mix mix;
  spoil(mix);
  CHECK_THROWS_AS(mix_model(mix, {}), std::invalid_argument);
}

}  // namespace

TEST_CASE("set times are estimated from the mix and said to be") {
  Mix mix;
  mix.ash_fraction = 0.2;
  const MixModel model = mix_model(mix, {});
  CHECK(model.setting.estimated);
  CHECK(noted(model,
              "set times 4 h 39 min and 6 h 26 min at 73 °F (23 °C) before admixtures, estimated "
              "from w/cm 0.45, "
              "20% class F fly ash (published tables, from memory)"));
}

TEST_CASE("the supplier's set times are used as they are") {
  Mix mix;
  mix.supplier_initial_set_h = 5.0;
  mix.supplier_final_set_h = 6.75;
  const MixModel model = mix_model(mix, {});
  CHECK_FALSE(model.setting.estimated);
  CHECK(model.setting.initial_set_h == 5.0);
  CHECK(model.setting.final_set_h == 6.75);
  CHECK(noted(model,
              "set times 5 h and 6 h 45 min at 73 °F (23 °C) before admixtures, the supplier's"));
}

TEST_CASE("the admixtures given are used, not the mix's own") {
  Mix mix;
  mix.admixtures = {retarder(3.0)};
  CHECK(mix_model(mix, {}).setting.shift_h == 0.0);
  const MixModel model = mix_model(mix, {retarder(1.5)});
  CHECK(model.setting.shift_h == doctest::Approx(1.5));
  CHECK(model.hydration.shift_h == doctest::Approx(1.5));
  CHECK(model.strength.start_set_age_h == doctest::Approx(5.5 + 1.5 - 1.3));
  CHECK(noted(model, "set retarder: +1.5 h"));
}

TEST_CASE("the first note says where the set times are from") {
  CHECK(mix_model(Mix{}, {retarder(1.5)}).notes.front().starts_with("set times "));
}

TEST_CASE("discharge temperature is typed or follows from the ingredients") {
  Mix mix;
  mix.temperature = 22.5;
  CHECK(mix_model(mix, {}).discharge_c == 22.5);
  mix.temperature = IngredientTemperatures{.cement_c = 20,
                                           .aggregate_c = 20,
                                           .water_c = 20,
                                           .aggregate_kg_m3 = 1800,
                                           .aggregate_moisture_kg_m3 = 0,
                                           .ice_kg_m3 = 0};
  CHECK(mix_model(mix, {}).discharge_c == doctest::Approx(20.0));
  CHECK(noted(mix_model(mix, {}), "follows from the ingredients"));
}

TEST_CASE("aggregate sets conductivity and expansion") {
  Mix mix;
  CHECK(mix_model(mix, {}).concrete.conductivity_w_mk == doctest::Approx(2.0));
  CHECK(mix_model(mix, {}).expansion_per_k == doctest::Approx(9.9e-6));
  CHECK(noted(mix_model(mix, {}), "aggregate not known"));
  mix.aggregate = Aggregate::limestone;
  CHECK(mix_model(mix, {}).concrete.conductivity_w_mk == doctest::Approx(2.2));
  CHECK(mix_model(mix, {}).expansion_per_k == doctest::Approx(3.8e-6 * 1.8));
  CHECK_FALSE(noted(mix_model(mix, {}), "aggregate not known"));
  mix.aggregate = Aggregate::gravel;
  CHECK(mix_model(mix, {}).concrete.conductivity_w_mk == doctest::Approx(2.6));
}

TEST_CASE("silica fume makes a mix that hardly bleeds") {
  Mix mix;
  mix.silica_fume_fraction = 0.06;
  CHECK(mix_model(mix, {}).hardly_bleeds);
  CHECK(noted(mix_model(mix, {}), "hardly bleeds"));
  CHECK_FALSE(mix_model(Mix{}, {}).hardly_bleeds);
}

TEST_CASE("what read_job refuses is a programmer's error here") {
  check_refused([](Mix& m) { m.cementitious_kg_m3 = 0.0; });
  check_refused([](Mix& m) { m.w_cm = std::numeric_limits<double>::quiet_NaN(); });
  check_refused([](Mix& m) { m.ash_fraction = -0.1; });
  check_refused([](Mix& m) { m.ash_fraction = m.slag_fraction = 0.6; });
  check_refused([](Mix& m) { m.air_fraction = 1.5; });
  check_refused([](Mix& m) { m.specified_strength_psi = 0.0; });
  check_refused([](Mix& m) { m.supplier_initial_set_h = 4.0; });
  check_refused([](Mix& m) {
    m.supplier_initial_set_h = 5.0;
    m.supplier_final_set_h = 5.0;
  });
}
