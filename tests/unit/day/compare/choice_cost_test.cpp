#include <cmath>

#include <doctest/doctest.h>

#include "day/compare/admixture_change.h"
#include "slabtide/core/units.h"
#include "slabtide/day/compare/choice_cost.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

/// Ten cubic yards at 564 lb/yd3, ordered without allowance.
Job ten_yards() {
  Job job = test::sample_job({test::zone_named("court", test::rectangle(0, 0, 10, 10))});
  job.zones[0].thickness_m = m3_from_yd3(10.0) / 100.0;
  job.order.allowance_fraction = 0.0;
  job.mix.cementitious_kg_m3 = kg_m3_from_lb_yd3(564.0);
  return job;
}

Admixture of(AdmixtureKind kind, double floz_cwt) {
  Admixture admixture;
  admixture.kind = kind;
  admixture.dose_ml_100kg = ml_100kg_from_floz_cwt(floz_cwt);
  return admixture;
}

ChoiceCost cost(const Job& ordered, const Job& changed) {
  const PlacingRates rates = default_practice().placing;
  return cost_of(ordered, plan_order(ordered, rates), changed, plan_order(changed, rates));
}

}  // namespace

TEST_CASE("a dose comes to what the arithmetic says") {
  Job changed = ten_yards();
  changed.mix.admixtures = {of(AdmixtureKind::retarder, 2.0)};
  // 2 fl oz/cwt x 5.64 cwt/yd3 x 10 yd3 = 112.8 fl oz.
  CHECK(cost(ten_yards(), changed).words ==
        "retarder 2 fl oz/cwt x 564 lb/yd³ x 10.0 yd³ = 113 fl oz");
  changed.units = UnitSystem::si;
  CHECK(cost(ten_yards(), changed).words == "retarder 130 mL/100 kg x 335 kg/m³ x 7.6 m³ = 3.3 L");
}

TEST_CASE("what is ordered already and what is left out are told apart") {
  Job ordered = ten_yards();
  ordered.mix.admixtures = {of(AdmixtureKind::retarder, 2.0)};
  Job more = ordered;
  more.mix.admixtures = {of(AdmixtureKind::retarder, 4.0)};
  CHECK(cost(ordered, more).words ==
        "retarder 4 fl oz/cwt x 564 lb/yd³ x 10.0 yd³ = 1.8 gal, of which 113 fl oz is already "
        "ordered");
  CHECK(cost(ordered, ten_yards()).words == "no retarder, which saves 113 fl oz");
}

TEST_CASE("leaving things costs nothing, and more costs more trouble") {
  CHECK(cost(ten_yards(), ten_yards()).disturbance == 0.0);
  CHECK(cost(ten_yards(), ten_yards()).words.empty());
  Job low = ten_yards();
  low.mix.admixtures = {of(AdmixtureKind::retarder, 2.0)};
  Job high = ten_yards();
  high.mix.admixtures = {of(AdmixtureKind::retarder, 4.0)};
  Job hand_more = high;
  ++hand_more.crew.finishers;
  CHECK(cost(ten_yards(), low).disturbance > 0.0);
  CHECK(cost(ten_yards(), high).disturbance > cost(ten_yards(), low).disturbance);
  CHECK(cost(ten_yards(), hand_more).disturbance > cost(ten_yards(), high).disturbance);
  CHECK(cost(ten_yards(), hand_more).words.find("1 finisher more") != std::string::npos);
}

TEST_CASE("a slab that waits half placed for a truck is more trouble than one between zones") {
  Job job = ten_yards();
  job.zones[0].outline = test::rectangle(0, 0, 10, 5);
  job.zones.push_back(job.zones[0]);
  job.zones[1].name = "path";
  job.pour.placing_sequence.push_back("path");
  Job between = job;
  between.order.load_size_m3 = m3_from_yd3(5.0);
  between.order.truck_spacing_min = 90.0;
  Job whole = job;
  whole.zones[0].outline = test::rectangle(0, 0, 10, 6);
  whole.zones[1].outline = test::rectangle(0, 0, 10, 4);
  Job within = whole;
  within.order = between.order;
  CHECK(cost(whole, within).disturbance > cost(job, between).disturbance + 2.0);
}

TEST_CASE("what is put up, laid or ordered warmer is trouble and has its words") {
  Job film = ten_yards();
  film.pour.evaporation_film = true;
  CHECK(cost(ten_yards(), film).words == "an evaporation film and a sprayer");
  Job blankets = ten_yards();
  blankets.pour.curing = CuringKind::blanket;
  CHECK(cost(ten_yards(), blankets).words == "blankets for 1076 ft²");
  Job cool = ten_yards();
  cool.mix.temperature = 15.0;
  CHECK(cost(ten_yards(), cool).words == "chilled water or ice at the plant");
  Job warm = ten_yards();
  warm.mix.temperature = 21.0;
  CHECK(cost(ten_yards(), warm).words == "hot water at the plant");
  // The same three kelvin: a plant heats its water all winter.
  CHECK(cost(ten_yards(), warm).disturbance < cost(ten_yards(), cool).disturbance);
}

TEST_CASE("an order in more trucks says so, and which are short") {
  Job changed = ten_yards();
  changed.order.load_size_m3 = m3_from_yd3(7.0);
  CHECK(cost(ten_yards(), changed).words == "2 trucks instead of 1");
  changed.order.load_size_m3 = m3_from_yd3(4.0);
  CHECK(cost(ten_yards(), changed).words ==
        "3 trucks instead of 1, 3 of them short (most plants charge for it)");
}

TEST_CASE("a film is sprayed again after each pass, a windbreak stands") {
  // Common practice, no source: on 600 ft² a film is the lesser trouble, on 2000 ft² it is not.
  const auto is_less = [](double area_ft2) {
    Job job = ten_yards();
    const double side_m = std::sqrt(m2_from_ft2(area_ft2));
    job.zones[0].outline = test::rectangle(0, 0, side_m, side_m);
    Job film = job;
    film.pour.evaporation_film = true;
    Job windbreak = job;
    windbreak.site.measured_wind_ratio = 0.2;
    return cost(job, film).disturbance < cost(job, windbreak).disturbance;
  };
  CHECK(is_less(600.0));
  CHECK(!is_less(2000.0));
}

TEST_CASE("shade over 600 ft² is more trouble than a worker for the day") {
  // Common practice, no source.
  Job shaded = ten_yards();
  shaded.zones[0].shaded = true;
  Job small = ten_yards();
  small.zones[0].outline = test::rectangle(0, 0, 4, 4);
  Job small_shaded = small;
  small_shaded.zones[0].shaded = true;
  Job another_hand = ten_yards();
  another_hand.crew.finishers += 1;
  CHECK(cost(ten_yards(), shaded).disturbance > cost(ten_yards(), another_hand).disturbance);
  CHECK(cost(small, small_shaded).disturbance < cost(ten_yards(), another_hand).disturbance);
}

}  // namespace slabtide
