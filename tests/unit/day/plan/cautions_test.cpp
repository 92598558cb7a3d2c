#include <doctest/doctest.h>

#include "mild_day.h"
#include "slabtide/day/plan/outlook.h"
#include "slabtide/day/plan/verdict.h"

// Each caution is triggered by a day made for it, and is absent on a mild day. Those of the weather
// have a file of their own.

namespace slabtide {

using namespace test;

TEST_CASE("a crew that cannot keep up is told what would help") {
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 12, 6);
  job.crew.finishers = 2;
  const auto cautions = cautions_with(job, no_change);
  const Caution* late = find_caution(cautions, "late_crew");
  REQUIRE(late != nullptr);
  CHECK(late->zone == "pad");
  CHECK(late->text.find("too much for the crew of 2, ") == 0);
  CHECK(late->text.find(" more finisher") != std::string::npos);
  job.crew.finishers = 12;
  CHECK(find_caution(cautions_with(job, no_change), "late_crew") == nullptr);
}

TEST_CASE("work beyond a zone that is finished and cannot be walked on is told") {
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 1.8, 1.2);
  job.zones[0].name = "steps";
  job.zones[0].finish = Finish::broom;
  job.zones.push_back(test::zone_named("porch", test::rectangle(0, 1.3, 4, 3), Finish::stamp));
  job.zones[1].shaded = true;
  job.pour.placing_sequence = {"steps", "porch"};
  CHECK(find_caution(cautions_with(job, no_change), "no_way_in") == nullptr);
  job.zones[1].reached_over = {"steps"};
  const auto cautions = cautions_with(job, no_change);
  const Caution* shut = find_caution(cautions, "no_way_in");
  REQUIRE(shut != nullptr);
  CHECK(shut->zone == "porch");
  CHECK(shut->loss == Loss::finish);
  CHECK(shut->text.find("no way to the stamp at ") == 0);
  CHECK(shut->text.find(" except over the steps, finished at ") != std::string::npos);
}

TEST_CASE("work that the crew's hours leave nobody for is told") {
  Job job = mild_job();
  CHECK(find_caution(cautions_with(job, no_change), "outside_hours") == nullptr);
  job.crew.finishers = 1;
  job.crew.hands = {{"Ann", 1.0, 12 * 60, 12 * 60 + 5, false}};  // five minutes a day
  const auto cautions = cautions_with(job, no_change);
  const Caution* told = find_caution(cautions, "outside_hours");
  REQUIRE(told != nullptr);
  CHECK(told->loss == Loss::finish);
  CHECK(told->text.find("the crew's hours leave nobody there long enough for the ") == 0);
}

TEST_CASE("a mild day brings only what always holds") {
  const auto cautions = cautions_with(mild_job(), no_change);
  for (const Caution& caution : cautions) {
    CAPTURE(caution.code);
    CHECK(caution.level == CautionLevel::note);
  }
  CHECK(find_caution(cautions, "wet_cement") != nullptr);
  CHECK(find_caution(cautions, "silica") != nullptr);
  CHECK(find_caution(cautions, "licensed_practice") != nullptr);
}

TEST_CASE("calcium chloride is told where it spoils color or rusts steel") {
  // ACI 212.3R, 302.1R and 318, from memory.
  Job job = mild_job();
  job.mix.admixtures = {{AdmixtureKind::accelerator_chloride, {}, 1.0, {}}};
  CHECK(find_caution(cautions_with(job, no_change), "chloride_colour") == nullptr);
  CHECK(warns(cautions_with(job, no_change), "chloride_steel", CautionLevel::note));
  job.zones[0].colour = Colour::red_or_tan;
  job.zones[0].tied = true;
  CHECK(warns(cautions_with(job, no_change), "chloride_colour", CautionLevel::caution));
  CHECK(warns(cautions_with(job, no_change), "chloride_steel", CautionLevel::caution));
  job.mix.admixtures = {{AdmixtureKind::accelerator_non_chloride, 600.0, {}, {}}};
  CHECK(find_caution(cautions_with(job, no_change), "chloride_colour") == nullptr);
  CHECK(find_caution(cautions_with(job, no_change), "chloride_steel") == nullptr);
}

TEST_CASE("a curing compound under a sealer is told, a cure-and-seal is not") {
  // Common practice, no source.
  Job job = mild_job();
  job.pour.curing = CuringKind::film;
  CHECK(warns(cautions_with(job, no_change), "film_under_sealer", CautionLevel::caution));
  job.finish_work.sealer = SealerKind::cure_and_seal;
  CHECK(find_caution(cautions_with(job, no_change), "film_under_sealer") == nullptr);
  job.finish_work.sealer = SealerKind::sealer;
  job.pour.curing = CuringKind::none;
  CHECK(find_caution(cautions_with(job, no_change), "film_under_sealer") == nullptr);
}

TEST_CASE(
    "only a finish that is lost stops the pour, and no retarder is told against an accelerator") {
  Job job = mild_job();
  job.mix.admixtures = {{AdmixtureKind::accelerator_non_chloride, {}, {}, -3.0}};
  job.pour.transit_min = 90.0;
  int told = 0;
  for (const Caution& caution : cautions_with(job, no_change)) {
    if (caution.code != "no_window") continue;
    ++told;
    CHECK(caution.text.find("retarder") == std::string::npos);
    CHECK(caution.text.find("no accelerator") != std::string::npos);
    const bool edge = caution.text.find("edge") != std::string::npos;
    CHECK((caution.level == CautionLevel::stop) == !edge);
  }
  CHECK(told > 0);
}

TEST_CASE("a cover that lies while the slab is worked is told, one laid after it is not") {
  Job job = mild_job();
  Cover sheet;
  sheet.kind = CuringKind::plastic;
  sheet.from = job.pour.start;
  sheet.to = after_seconds(job.pour.start, 12.0 * 3600.0);
  job.pour.covers = {sheet};
  CHECK(warns(cautions_with(job, no_change), "cover_in_the_way", CautionLevel::caution));
  job.pour.covers[0].zones = {};
  job.pour.covers[0].from = after_seconds(job.pour.start, 11.9 * 3600.0);
  CHECK(find_caution(cautions_with(job, no_change), "cover_in_the_way") == nullptr);
}

TEST_CASE("under plastic or blankets one is told to saw before they go on, of what is sawn") {
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 8, 4);
  for (const CuringKind curing : {CuringKind::plastic, CuringKind::blanket}) {
    job.pour.curing = curing;
    CHECK(warns(cautions_with(job, no_change), "saw_before_cover", CautionLevel::caution));
  }
  job.pour.curing = CuringKind::film;
  CHECK(find_caution(cautions_with(job, no_change), "saw_before_cover") == nullptr);
  Job uncut = mild_job();
  uncut.zones[0].outline = test::rectangle(0, 0, 2, 2);
  uncut.pour.curing = CuringKind::blanket;
  CHECK(find_caution(cautions_with(uncut, no_change), "saw_before_cover") == nullptr);
}

TEST_CASE("the loads have cautions of their own") {
  Job job = mild_job();
  job.order.short_load_m3 = 3.0;
  CHECK(warns(cautions_with(job, no_change), "short_load", CautionLevel::note));
  job.pour.placing_rate_m3_h = 0.5;
  job.order.discharge_limit_min = 200.0;
  CHECK(warns(cautions_with(job, no_change), "discharge_limit", CautionLevel::caution));
}

TEST_CASE("a crew, a truck or rain that loses the finish or the slab stops the pour") {
  Job slow = mild_job();
  slow.pour.placing_rate_m3_h = 0.5;  // 1.6 m³: three hours, the limit agreed is an hour and a half
  slow.order.discharge_limit_min = 90.0;
  CHECK(warns(cautions_with(slow, no_change), "discharge_limit", CautionLevel::stop));

  Job large = mild_job();
  large.zones[0] = test::zone_named("pad", test::rectangle(0, 0, 20, 12), Finish::broom);
  large.crew.finishers = 1;
  CHECK(warns(cautions_with(large, no_change), "late_crew", CautionLevel::stop));

  const auto rain = [](double chance) {
    return [chance](ForecastHour& hour) {
      hour.rain_chance = chance;
      hour.rain_mm = chance > 0.0 ? 1.0 : 0.0;
    };
  };
  CHECK(warns(cautions_with(mild_job(), rain(0.31)), "rain", CautionLevel::caution));
  CHECK(warns(cautions_with(mild_job(), rain(0.35)), "rain", CautionLevel::stop));
}

TEST_CASE("the verdict is the weightiest caution's, with its reasons") {
  const auto judged = [](const std::vector<Caution>& cautions) {
    const Job job = mild_job();
    const Forecast forecast = mild_forecast(job);
    const auto series = WeatherSeries::from_forecast(forecast);
    const Practice practice = default_practice();
    const auto run = run_pour(job, *series.value, practice, {});
    DayPlan plan = plan_day(job, *run.value, practice);
    plan.cautions = cautions;
    return look_ahead({job, forecast, practice, *run.value, plan});
  };
  const auto caution = [](const char* title, CautionLevel level, Loss loss) {
    return Caution{"code", title, level, loss, {}, {}, {}, "x", "ours"};
  };
  const Caution note = caution("minor", CautionLevel::note, Loss::people);
  const Caution care = caution("fast drying", CautionLevel::caution, Loss::crack);
  const Caution stop = caution("frozen ground", CautionLevel::stop, Loss::slab);
  CHECK(judged({note}).verdict == Verdict::good);
  const Outlook careful = judged({note, care, care});
  CHECK(careful.verdict == Verdict::care);
  CHECK(careful.reasons == std::vector<std::string>{"fast drying"});
  const Outlook stopped = judged({care, stop, note});
  CHECK(stopped.verdict == Verdict::think_again);
  CHECK(stopped.reasons == std::vector<std::string>{"frozen ground"});
  const Caution cracks = caution("saw too late", CautionLevel::stop, Loss::crack);
  const Caution spoils = caution("no good time", CautionLevel::stop, Loss::finish);
  CHECK(judged({cracks, spoils, stop}).reasons ==
        std::vector<std::string>{"frozen ground", "no good time", "saw too late"});

  // Hours are listed from two before the pour to two after sunset, one apart.
  CHECK(careful.hours.front().at == after_seconds(mild_job().pour.start, -7200.0));
  for (std::size_t i = 1; i < careful.hours.size(); ++i) {
    CHECK(seconds_between(careful.hours[i - 1].at, careful.hours[i].at) == 3600.0);
  }
  // At 73 °F the rate of setting is 1; the concrete arrives at 18 °C, so its rate is lower.
  CHECK(careful.hours.front().set_rate_sun < 1.0);
  CHECK(careful.hours.front().set_rate_sun > 0.7);
}

}  // namespace slabtide
