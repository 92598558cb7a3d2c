#include <doctest/doctest.h>

#include "day/compare/admixture_change.h"
#include "day/compare/job_change.h"
#include "slabtide/core/units.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

using test::choice_named;
using test::PlannedDay;
using test::rectangle;
using test::sample_job;
using test::why_left_out;
using test::zone_named;

Admixture retarder(double floz_cwt) {
  Admixture admixture;
  admixture.dose_ml_100kg = ml_100kg_from_floz_cwt(floz_cwt);
  return admixture;
}

Job two_pads() {
  return sample_job({zone_named("court", rectangle(0, 0, 4, 4), Finish::stamp),
                     zone_named("path", rectangle(10, 0, 4, 2))});
}

double retarded_fraction(const Choice& choice) {
  const OrderPlan order = plan_order(choice.job, default_practice().placing);
  for (const AdmixtureUse& use : admixture_use(choice.job, order)) {
    if (use.kind == AdmixtureKind::retarder) return use.concrete_m3 / order.ordered_m3;
  }
  return 0.0;
}

}  // namespace

TEST_CASE("some twenty choices come from a plain job, as ordered first") {
  const Choices choices = PlannedDay(two_pads()).choices();
  CHECK(choices.tried.size() >= 15);
  CHECK(choices.tried.size() <= 25);
  CHECK(choices.tried.front().kind == ChoiceKind::as_ordered);
  for (const Choice& choice : choices.tried) {
    INFO(choice.label);
    CHECK(!choice.words.empty());
    if (choice.kind == ChoiceKind::crew || choice.kind == ChoiceKind::saw) {
      CHECK(pour_signature(choice.job) == pour_signature(choices.tried.front().job));
    } else if (choice.kind != ChoiceKind::as_ordered) {
      CHECK(pour_signature(choice.job) != pour_signature(choices.tried.front().job));
    }
  }
}

/// Loads are ordered to the quarter yard, of the three that these pads take.
constexpr double quarter_yard = 0.25;

TEST_CASE("retarder goes into all of the concrete, its last half or its last third") {
  const Choices choices = PlannedDay(two_pads()).choices();
  CHECK(retarded_fraction(*choice_named(choices, "as ordered")) == 0.0);
  CHECK(retarded_fraction(*choice_named(choices, "retarder 2 oz/cwt, all loads")) ==
        doctest::Approx(1.0));
  CHECK(retarded_fraction(*choice_named(choices, "retarder 2 oz/cwt, last half")) ==
        doctest::Approx(0.5).epsilon(quarter_yard));
  CHECK(retarded_fraction(*choice_named(choices, "retarder 4 oz/cwt, last third")) ==
        doctest::Approx(1.0 / 3.0).epsilon(quarter_yard));
}

TEST_CASE("an order of several loads keeps them and retards the last") {
  Job job = two_pads();
  job.order.load_size_m3 = plan_order(job, default_practice().placing).ordered_m3 / 5.9;
  const Choices choices = PlannedDay(job).choices();
  const Choice& third = *choice_named(choices, "retarder 2 oz/cwt, last third");
  REQUIRE(third.job.order.loads.size() == 2);
  CHECK(third.job.order.loads[0].number == 5);
  CHECK(third.job.order.loads[1].number == 6);
  CHECK(third.words.find("in the last 2 of 6 loads") != std::string::npos);
  CHECK(third.job.order.load_size_m3 == job.order.load_size_m3);
}

TEST_CASE("what makes no sense is left out and says why") {
  Job job = sample_job({zone_named("court", rectangle(0, 0, 4, 4), Finish::stamp)});
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(6));
  job.pour.saws = {SawKind::early_entry};
  job.crew.finishers = 1;
  const Choices choices = PlannedDay(job).choices();
  CHECK(why_left_out(choices.left_out, "reversed order") == "there is one zone");
  CHECK(why_left_out(choices.left_out, "start 2 h earlier") ==
        "4:00 AM is before the plant opens (compare.earliest_start_h)");
  CHECK(why_left_out(choices.left_out, "early-entry saw rented") == "there is one on hand");
  CHECK(why_left_out(choices.left_out, "0 finishers") == "somebody must be there");
  CHECK(choice_named(choices, "start 1 h earlier") != nullptr);
}

TEST_CASE("no order is offered that the job rules out") {
  Job job = two_pads();
  job.zones[1].after = {"court"};
  const Choices choices = PlannedDay(job).choices();
  CHECK(why_left_out(choices.left_out, "reversed order") == "path comes after court");
  CHECK(choice_named(choices, "reversed order") == nullptr);
}

TEST_CASE("zones with hours of their own move with the start and are not turned round") {
  Job job = two_pads();
  job.zones[1].placed_at = after_seconds(job.pour.start, 2.0 * 3600.0);
  const Choices choices = PlannedDay(job).choices();
  CHECK(why_left_out(choices.left_out, "reversed order") == "zones have times of their own");
  const Choice& later = *choice_named(choices, "start 2 h later");
  CHECK(later.job.pour.start == *job.zones[1].placed_at);
  CHECK(seconds_between(*job.zones[1].placed_at, *later.job.zones[1].placed_at) == 7200.0);
}

TEST_CASE("a change that is ordered already is not tried again") {
  Job job = two_pads();
  job.mix.admixtures = {Admixture{}};
  job.mix.admixtures.front().dose_ml_100kg = default_practice().compare.retarder_low_ml_100kg;
  const Choices choices = PlannedDay(job).choices();
  CHECK(why_left_out(choices.left_out, "retarder 2 oz/cwt, all loads") ==
        "the same as 'as ordered'");
  CHECK(retarded_fraction(*choice_named(choices, "no retarder")) == 0.0);
}

TEST_CASE("the user's own options are tried, and refused where they cannot be") {
  Job job = two_pads();
  OptionNote note;
  note.name = "mine";
  note.start_shift_min = -30.0;
  note.finishers = 6;
  note.shaded_zones = {"path"};
  note.placing_sequence = {"path", "court"};
  note.saws = {SawKind::wet};
  note.wind_ratio = 0.2;
  note.admixtures = std::vector{retarder(3.0)};
  note.admixture_zones = {"court"};
  note.load_size_m3 = 1.0;
  note.truck_spacing_min = 40.0;
  note.concrete_c = 15.0;
  note.curing = CuringKind::blanket;
  note.curing_blanket_m2k_w = 0.9;
  note.evaporation_film = true;
  OptionNote nowhere;
  nowhere.name = "nowhere";
  nowhere.shaded_zones = {"roof"};
  OptionNote too_many;
  too_many.name = "too many";
  too_many.admixtures = std::vector{retarder(3.0)};
  too_many.last_loads = 3;
  OptionNote half_an_order;
  half_an_order.name = "half an order";
  half_an_order.placing_sequence = {"path"};
  job.options = {note, nowhere, too_many, half_an_order};
  const Choices choices = PlannedDay(job).choices();
  const Choice* mine = choice_named(choices, "mine");
  REQUIRE(mine != nullptr);
  CHECK(mine->kind == ChoiceKind::own);
  CHECK(seconds_between(job.pour.start, mine->job.pour.start) == -1800.0);
  CHECK(mine->job.crew.finishers == 6);
  CHECK(mine->job.zones[1].shaded);
  CHECK(mine->job.pour.placing_sequence.front() == "path");
  CHECK(mine->job.pour.saws == note.saws);
  CHECK(mine->job.site.measured_wind_ratio == 0.2);
  CHECK(mine->job.zones[0].admixtures == note.admixtures);
  CHECK(!mine->job.zones[1].admixtures);
  CHECK(mine->job.order.load_size_m3 == 1.0);
  CHECK(mine->job.order.truck_spacing_min == 40.0);
  CHECK(std::get<double>(mine->job.mix.temperature) == 15.0);
  CHECK(mine->job.pour.curing == CuringKind::blanket);
  CHECK(mine->job.pour.curing_blanket_m2k_w == 0.9);
  CHECK(mine->job.pour.evaporation_film);
  CHECK(why_left_out(choices.left_out, "nowhere") == "there is no zone 'roof'");
  CHECK(why_left_out(choices.left_out, "too many") == "it wants the last 3 loads and there is 1");
  CHECK(why_left_out(choices.left_out, "half an order") ==
        "its zone order does not name every zone once");
}

TEST_CASE("a zone's own truck comes after the rest, and single loads have their own doses") {
  const Job job = two_pads();
  OptionNote note;
  note.own_truck = OwnTruck{"path", 45.0};
  note.loads = {{2, {retarder(1.0)}}};
  const PlacingRates rates = default_practice().placing;
  const ChangedJob changed = with_change(job, note, rates);
  REQUIRE(changed.job);
  const OrderPlan before = plan_order(job, rates);
  const OrderPlan after = plan_order(*changed.job, rates);
  REQUIRE(after.loads.size() == 2);
  CHECK(seconds_between(before.placings[1].start, after.placings[1].start) == 45.0 * 60.0);
  CHECK(after.loads[0].admixtures.empty());
  CHECK(after.loads[1].admixtures == note.loads[0].admixtures);
  note.own_truck->zone = "court";
  CHECK(with_change(job, note, rates).fault ==
        "it is placed first, and its truck is the first already");
}

TEST_CASE("two changes of different things join, two of the same do not") {
  OptionNote start;
  start.start_shift_min = -60.0;
  OptionNote hands;
  hands.finishers = 5;
  hands.shaded_zones = {"court"};
  OptionNote shade;
  shade.shaded_zones = {"path"};
  const auto both = joined_change(start, hands);
  REQUIRE(both);
  CHECK(both->start_shift_min == -60.0);
  CHECK(both->finishers == 5);
  CHECK(joined_change(*both, shade)->shaded_zones == std::vector<std::string>{"court", "path"});
  CHECK(!joined_change(*both, start));
  OptionNote dose;
  dose.admixtures = std::vector{retarder(2.0)};
  OptionNote by_load;
  by_load.loads = {{2, {retarder(1.0)}}};
  CHECK(!joined_change(dose, by_load));
  OptionNote smaller;
  smaller.load_size_m3 = 2.0;
  OptionNote apart;
  apart.truck_spacing_min = 60.0;
  CHECK(!joined_change(smaller, apart));
}

TEST_CASE("what a day does not threaten is not tried against") {
  const Choices mild = PlannedDay(two_pads()).choices();
  for (const Choice& choice : mild.tried) {
    INFO(choice.label);
    CHECK(choice.kind != ChoiceKind::cover);
    CHECK(choice.kind != ChoiceKind::loads);
    if (choice.kind == ChoiceKind::concrete) CHECK(choice.label.ends_with("cooler"));
  }
  Job cold = two_pads();
  auto& weather = std::get<TypedWeather>(cold.weather);
  weather.high_c = 8.0;
  weather.low_c = 0.0;
  weather.next_low_c = -5.0;
  cold.mix.temperature = 14.0;
  const Choices frost = PlannedDay(cold).choices();
  CHECK(choice_named(frost, "blankets R-3") != nullptr);
  CHECK(choice_named(frost, "blankets R-6") != nullptr);
  CHECK(choice_named(frost, "concrete 10 °F warmer") != nullptr);
  CHECK(choice_named(frost, "concrete 4 °F cooler") == nullptr);
  // Twice 10 °F over 57 is 77: it would stiffen in the drum.
  CHECK(why_left_out(frost.left_out, "concrete 20 °F warmer") == "it would stiffen in the drum");
}

TEST_CASE("no start is offered on a day that cannot be planned") {
  Job job = two_pads();
  job.pour.date = Date(2007, 1, 1);
  job.pour.start = job.site.time_zone.utc_from_local(LocalTime(job.pour.date)).utc;
  OptionNote note;
  note.start_shift_min = -60.0;
  CHECK(with_change(job, note, default_practice().placing).fault ==
        "no day so far off can be planned");
}

TEST_CASE("concrete that is cool already is not chilled") {
  // Common practice, no source: a retarder does it for less.
  Job job = two_pads();
  job.mix.temperature = celsius_from_fahrenheit(68.0);
  CHECK(why_left_out(PlannedDay(job).choices().left_out, "concrete 4 °F cooler") ==
        "nobody ices a slab's concrete under 65 °F");
  job.mix.temperature = celsius_from_fahrenheit(80.0);
  CHECK(choice_named(PlannedDay(job).choices(), "concrete 8 °F cooler") != nullptr);
}

TEST_CASE("the sunny zones alone get retarder where there is shade elsewhere") {
  Job job = two_pads();
  job.zones[1].shaded = true;
  // A truck is dosed as a whole (common practice, no source).
  CHECK(why_left_out(PlannedDay(job).choices().left_out, "retarder 2 oz/cwt, in the sun") ==
        "load 1 is for other zones too, and a truck is dosed as a whole");
  job.zones[1].placed_at = after_seconds(job.pour.start, 3600.0);  // from a truck of its own
  const Choices choices = PlannedDay(job).choices();
  const Choice* sunny = choice_named(choices, "retarder 2 oz/cwt, in the sun");
  REQUIRE(sunny != nullptr);
  CHECK(sunny->job.zones[0].admixtures);
  CHECK(!sunny->job.zones[1].admixtures);
  CHECK(why_left_out(choices.left_out, "shade on path") == "it is in the shade already");
  job.zones[1].shaded = false;
  job.zones[1].placed_at.reset();
  CHECK(why_left_out(PlannedDay(job).choices().left_out, "retarder 2 oz/cwt, in the sun") ==
        "every zone is in the sun: the same as in every load");
}

TEST_CASE("no shade on a cool day or in a gale, no windbreak where no wind blows") {
  // Common practice, no source.
  Job job = two_pads();
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.high_c = 28.0;
  weather.low_c = 18.0;
  weather.wind_10m_m_s = 5.0;
  CHECK(choice_named(PlannedDay(job).choices(), "shade on court") != nullptr);
  CHECK(choice_named(PlannedDay(job).choices(), "windbreak") != nullptr);
  weather.wind_10m_m_s = 9.0;
  CHECK(why_left_out(PlannedDay(job).choices().left_out, "shade on court")
            .starts_with("it would not stand in wind"));
  weather.wind_10m_m_s = 1.0;
  weather.high_c = 16.0;
  weather.low_c = 6.0;
  const Choices cool = PlannedDay(job).choices();
  CHECK(why_left_out(cool.left_out, "shade on court") == "under 70 °F a slab wants the sun");
  CHECK(why_left_out(cool.left_out, "windbreak") == "there is too little wind for one");
}

}  // namespace slabtide
