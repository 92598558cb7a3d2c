#include <variant>

#include <doctest/doctest.h>

#include "job_text.h"
#include "slabtide/core/units.h"

// What read_job makes of a mix. Messages about wrong files are tested in tests/bad_input.

namespace slabtide::test {

TEST_CASE("the mix from its weights") {
  const auto by_water = read(job_with("w_cm = 0.45", "water = 282")).mix;
  CHECK(by_water.w_cm == doctest::Approx(0.5));
  // A fifth is ash: 451.2 lb of cement in 564.
  const auto by_cement =
      read(job_with("cementitious = 564\nw_cm = 0.45", "cement = 451.2\nfly_ash = 20\nwater = 282"))
          .mix;
  CHECK(by_cement.cementitious_kg_m3 == doctest::Approx(kg_m3_from_lb_yd3(564.0)));
  CHECK(by_cement.w_cm == doctest::Approx(0.5));
  CHECK(by_cement.ash_fraction == doctest::Approx(0.2));
  const auto by_fraction = read(job_with("w_cm = 0.45", "w_cm = 0.45\nslag_share = 0.3")).mix;
  CHECK(by_fraction.slag_fraction == doctest::Approx(0.3));
}

TEST_CASE("the mix by its sacks") {
  for (const char* sacks : {"6-sack", "6 sack", "six sack", "\"Six sacks\"", "6 bags", "6 sk",
                            "6 sacks/yd", "6 sacks a yard"}) {
    for (const char* key : {"sacks", "cement", "cementitious"}) {
      CAPTURE(std::string(key) + " = " + sacks);
      // A six-sack mix has 564 lb of cement and ash together.
      const auto mix =
          read(job_with("cementitious = 564", std::string(key) + " = " + sacks + "\nfly_ash = 20"))
              .mix;
      CHECK(mix.cementitious_kg_m3 == doctest::Approx(kg_m3_from_lb_yd3(564.0)));
    }
  }
  const auto bare = read(job_with("cementitious = 564", "sacks = 6")).mix;
  CHECK(bare.cementitious_kg_m3 == doctest::Approx(kg_m3_from_lb_yd3(564.0)));
}

TEST_CASE("figures of a mix with what they are of") {
  const auto mix = read(job_with("w_cm = 0.45\nstrength = 4000",
                                 "w_cm = 0.45\nstrength = 4500 psi mix\nslump = 4 inch slump\n"
                                 "air = 5% air"))
                       .mix;
  CHECK(mix.specified_strength_psi == doctest::Approx(4500.0));
  CHECK(mix.slump_m == doctest::Approx(m_from_in(4.0)));
  CHECK(mix.air_fraction == doctest::Approx(0.05));
}

TEST_CASE("the mix's temperature from its ingredients") {
  const auto mix = read(job_with("concrete_temperature = 59", R"([mix.ingredients]
cement_temperature = 150
aggregate_temperature = 70
water_temperature = 70
aggregate = 3300
ice = 20)"))
                       .mix;
  const auto& parts = std::get<IngredientTemperatures>(mix.temperature);
  CHECK(parts.cement_c == doctest::Approx(65.5556));
  CHECK(parts.aggregate_c == doctest::Approx(21.1111));
  CHECK(parts.aggregate_kg_m3 == doctest::Approx(kg_m3_from_lb_yd3(3300.0)));
  CHECK(parts.ice_kg_m3 == doctest::Approx(kg_m3_from_lb_yd3(20.0)));
  CHECK(parts.aggregate_moisture_kg_m3 == 0.0);
}

TEST_CASE("admixtures by dose, by percent and by the supplier's shift") {
  const auto mix = read(job_with("concrete_temperature = 59", R"(concrete_temperature = 59
[[mix.admixture]]
kind = "stabilizer"
dose = 4
[[mix.admixture]]
kind = "Calcium Chloride"
dose_percent = 1.5
[[mix.admixture]]
kind = "non-chloride accelerator"
shift = -1.5)"))
                       .mix;
  REQUIRE(mix.admixtures.size() == 3);
  CHECK(mix.admixtures[0].kind == AdmixtureKind::stabiliser);
  CHECK(*mix.admixtures[0].dose_ml_100kg == doctest::Approx(260.8).epsilon(1e-3));
  CHECK(*mix.admixtures[1].dose_percent == 1.5);
  CHECK_FALSE(mix.admixtures[1].dose_ml_100kg);
  CHECK(*mix.admixtures[2].shift_h == -1.5);
}

TEST_CASE("a zone's own admixtures, and none at all") {
  const auto none = read(job_with("finish = \"broom\"", "finish = \"broom\"\nadmixtures = []"));
  REQUIRE(none.zones[0].admixtures);
  CHECK(none.zones[0].admixtures->empty());
}

TEST_CASE("a mix as a contractor orders it: sacks and slump, or strength") {
  // ACI 211.1-91, tables 6.3.3 and 6.3.4(a), from memory: 3/4 in aggregate, entrained air, 305 lb
  // of water for 3 to 4 in of slump; 4000 psi at w/c 0.48, 0.57 without air.
  const Job both = read(job_with("cementitious = 564\nw_cm = 0.45", "sacks = 6\nslump = 3.5"));
  CHECK(both.mix.w_cm == doctest::Approx(0.48));  // the less, so that the strength is met too
  CHECK(both.mix.water_source == WaterSource::strength);
  const Job ordered = read(job_with("cementitious = 564\nw_cm = 0.45", "sacks = 7\nslump = 3.5"));
  CHECK(ordered.mix.cementitious_kg_m3 == doctest::Approx(kg_m3_from_lb_yd3(658.0)));
  CHECK(ordered.mix.w_cm == doctest::Approx(305.0 / 658.0));
  CHECK(ordered.mix.water_source == WaterSource::slump);
  CHECK(read(job_with("w_cm = 0.45\n", "")).mix.w_cm == doctest::Approx(0.48));
  CHECK(read(job_with("w_cm = 0.45", "air = 2")).mix.w_cm == doctest::Approx(0.57));
  const Job told = read(job_with("w_cm = 0.45", "w_cm = 0.45\nslump = 5"));
  CHECK(told.mix.water_source == WaterSource::told);
  CHECK(told.mix.w_cm == 0.45);
}

}  // namespace slabtide::test
