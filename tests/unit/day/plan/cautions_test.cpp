#include <doctest/doctest.h>

#include <algorithm>

#include "slabtide/core/units.h"
#include "slabtide/day/plan/outlook.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/weather/sky/sun.h"
#include "support/plain_forecast.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

// Each caution is triggered by a day made for it, and is absent on a mild day.

namespace slabtide {

namespace {

using testing::plain_forecast;

/// One shaded stamped pad under a mild, cloudy sky: nothing to watch for.
Job mild_job() {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 4, 4), Finish::stamp)});
  job.zones[0].shaded = true;
  job.mix.temperature = 18.0;
  job.mix.air_fraction = 0.06;
  job.order.short_load_m3 = 0.0;
  job.pour.saws = {SawKind::early_entry};
  return job;
}

/// Four flat days around the pour: 17 °C, dew point 8 °C, 2 m/s, overcast.
Forecast mild_forecast(const Job& job) {
  const UtcTime from(job.pour.date - boost::gregorian::days(1));
  Forecast forecast = plain_forecast(from, 96);
  for (ForecastHour& hour : forecast.hours) {
    hour.air_c = 17.0;
    hour.wind_10m_m_s = 2.0;
    hour.cloud_fraction = 1.0;
  }
  return forecast;
}

template <class Change>
std::vector<Caution> cautions_with(const Job& job, Change change,
                                   std::optional<double> age_h = std::nullopt) {
  Forecast forecast = mild_forecast(job);
  for (ForecastHour& hour : forecast.hours) change(hour);
  const auto series = WeatherSeries::from_forecast(forecast);
  REQUIRE(series.ok());
  const Practice practice = default_practice();
  const auto run = run_pour(job, *series.value, practice, {});
  REQUIRE(run.ok());
  return plan_day(job, *run.value, practice, age_h).cautions;
}

const Caution* find(const std::vector<Caution>& cautions, std::string_view code) {
  const auto found = std::find_if(cautions.begin(), cautions.end(),
                                  [code](const Caution& c) { return c.code == code; });
  return found == cautions.end() ? nullptr : &*found;
}

bool warns(const std::vector<Caution>& cautions, std::string_view code, CautionLevel level) {
  const Caution* caution = find(cautions, code);
  if (caution == nullptr) return false;
  CHECK(!caution->text.empty());
  CHECK(!caution->title.empty());
  CHECK(!caution->source.empty());
  return caution->level == level;
}

constexpr auto no_change = [](ForecastHour&) {};

}  // namespace

TEST_CASE("a crew that cannot keep up is told what would help") {
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 12, 6);
  job.crew.finishers = 2;
  const auto cautions = cautions_with(job, no_change);
  const Caution* late = find(cautions, "late_crew");
  REQUIRE(late != nullptr);
  CHECK(late->zone == "pad");
  CHECK(late->text.find("too much for the crew of 2, ") == 0);
  CHECK(late->text.find(" more finisher") != std::string::npos);
  job.crew.finishers = 12;
  CHECK(find(cautions_with(job, no_change), "late_crew") == nullptr);
}

TEST_CASE("work beyond a zone that is finished and cannot be walked on is told") {
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 1.8, 1.2);
  job.zones[0].name = "steps";
  job.zones[0].finish = Finish::broom;
  job.zones.push_back(test::zone_named("porch", test::rectangle(0, 1.3, 4, 3), Finish::stamp));
  job.zones[1].shaded = true;
  job.pour.placing_sequence = {"steps", "porch"};
  CHECK(find(cautions_with(job, no_change), "no_way_in") == nullptr);
  job.zones[1].reached_over = {"steps"};
  const auto cautions = cautions_with(job, no_change);
  const Caution* shut = find(cautions, "no_way_in");
  REQUIRE(shut != nullptr);
  CHECK(shut->zone == "porch");
  CHECK(shut->loss == Loss::finish);
  CHECK(shut->text.find("no way to the stamp at ") == 0);
  CHECK(shut->text.find(" except over the steps, finished at ") != std::string::npos);
}

TEST_CASE("a crew in the heat is told the heat index and its hours") {
  const Job job = mild_job();
  const auto at_f = [&job](double air_f, double dew_f) {
    return cautions_with(job, [&](ForecastHour& hour) {
      hour.air_c = celsius_from_fahrenheit(air_f);
      hour.dew_point_c = celsius_from_fahrenheit(dew_f);
    });
  };
  CHECK(find(at_f(84.0, 60.0), "heat") == nullptr);
  // 90 °F at 69 °F dew point is 50 % humidity: 95 °F on the NWS chart, from memory.
  const auto hot = at_f(90.0, 69.0);
  const Caution* heat = find(hot, "heat");
  REQUIRE(heat != nullptr);
  CHECK(heat->level == CautionLevel::note);
  CHECK(heat->loss == Loss::people);
  CHECK(heat->text.find("over 91 °F from ") != std::string::npos);
  CHECK(heat->text.find("over 103 °F") == std::string::npos);
  const auto hotter = at_f(98.0, 74.0);
  REQUIRE(find(hotter, "heat") != nullptr);
  CHECK(find(hotter, "heat")->level == CautionLevel::caution);
  CHECK(find(hotter, "heat")->text.find("over 103 °F from ") != std::string::npos);
}

TEST_CASE("in the heat each hand of the job is told how long they are in it") {
  Job job = mild_job();
  job.crew.finishers = 2;
  job.crew.hands = {{"Ann", 1.0, std::nullopt, std::nullopt, false}};
  const auto hot = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = celsius_from_fahrenheit(98.0);
    hour.dew_point_c = celsius_from_fahrenheit(74.0);
  });
  REQUIRE(find(hot, "heat") != nullptr);
  // It is over both bands all day, so for as long as she is there.
  const std::string& text = find(hot, "heat")->text;
  const auto told = text.find(". Over 91 °F: Ann ");
  REQUIRE(told != std::string::npos);
  CHECK(text.find(" of it over 103 °F)", told) != std::string::npos);
  CHECK(text.find("finisher 2 ", told) != std::string::npos);
}

TEST_CASE("work that the crew's hours leave nobody for is told") {
  Job job = mild_job();
  CHECK(find(cautions_with(job, no_change), "outside_hours") == nullptr);
  job.crew.finishers = 1;
  job.crew.hands = {{"Ann", 1.0, 12 * 60, 12 * 60 + 5, false}};  // five minutes a day
  const auto cautions = cautions_with(job, no_change);
  const Caution* told = find(cautions, "outside_hours");
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
  CHECK(find(cautions, "wet_cement") != nullptr);
  CHECK(find(cautions, "silica") != nullptr);
  CHECK(find(cautions, "licensed_practice") != nullptr);
}

TEST_CASE("cold air, cold concrete, frozen ground and frost are told") {
  Job job = mild_job();
  const auto cold = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 3.0;
    hour.dew_point_c = -2.0;
  });
  CHECK(warns(cold, "cold_weather", CautionLevel::caution));
  CHECK(find(cold, "cold_concrete") == nullptr);
  job.mix.temperature = 11.0;
  const auto cold_mix = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 3.0;
    hour.dew_point_c = -2.0;
  });
  CHECK(warns(cold_mix, "cold_concrete", CautionLevel::caution));
  const auto frozen = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = -1.0;
    hour.dew_point_c = -5.0;
  });
  CHECK(warns(frozen, "frozen_ground", CautionLevel::stop));
  const auto frost = cautions_with(mild_job(), [](ForecastHour& hour) {
    hour.air_c = -8.0;
    hour.dew_point_c = -12.0;
    hour.cloud_fraction = 0.0;
  });
  CHECK(warns(frost, "freezing", CautionLevel::stop));
}

TEST_CASE("blankets that the job has are not asked for again") {
  const auto hard_frost = [](ForecastHour& hour) {
    hour.air_c = -8.0;
    hour.dew_point_c = -12.0;
    hour.cloud_fraction = 0.0;
  };
  Job job = mild_job();
  const auto bare = cautions_with(job, hard_frost);
  CHECK(find(bare, "freezing")->text.find("blankets on well before") != std::string::npos);
  job.pour.curing = CuringKind::blanket;
  const auto under_blankets = cautions_with(job, hard_frost);
  REQUIRE(warns(under_blankets, "freezing", CautionLevel::stop));
  CHECK(find(under_blankets, "freezing")->text.find("even under its blankets") !=
        std::string::npos);
}

TEST_CASE("hot concrete is stopped at the published limit") {
  Job job = mild_job();
  job.mix.temperature = 35.1;  // 95 °F is 35.0 (ACI 305.1-14, published)
  CHECK(warns(cautions_with(job, no_change), "hot_concrete", CautionLevel::stop));
  job.mix.temperature = 34.9;
  CHECK(find(cautions_with(job, no_change), "hot_concrete") == nullptr);
}

TEST_CASE("calcium chloride is told where it spoils color or rusts steel") {
  // ACI 212.3R, 302.1R and 318, from memory.
  Job job = mild_job();
  job.mix.admixtures = {{AdmixtureKind::accelerator_chloride, {}, 1.0, {}}};
  CHECK(find(cautions_with(job, no_change), "chloride_colour") == nullptr);
  CHECK(warns(cautions_with(job, no_change), "chloride_steel", CautionLevel::note));
  job.zones[0].colour = Colour::red_or_tan;
  job.zones[0].tied = true;
  CHECK(warns(cautions_with(job, no_change), "chloride_colour", CautionLevel::caution));
  CHECK(warns(cautions_with(job, no_change), "chloride_steel", CautionLevel::caution));
  job.mix.admixtures = {{AdmixtureKind::accelerator_non_chloride, 600.0, {}, {}}};
  CHECK(find(cautions_with(job, no_change), "chloride_colour") == nullptr);
  CHECK(find(cautions_with(job, no_change), "chloride_steel") == nullptr);
}

TEST_CASE("a curing compound under a sealer is told, a cure-and-seal is not") {
  // Common practice, no source.
  Job job = mild_job();
  job.pour.curing = CuringKind::film;
  CHECK(warns(cautions_with(job, no_change), "film_under_sealer", CautionLevel::caution));
  job.finish_work.sealer = SealerKind::cure_and_seal;
  CHECK(find(cautions_with(job, no_change), "film_under_sealer") == nullptr);
  job.finish_work.sealer = SealerKind::sealer;
  job.pour.curing = CuringKind::none;
  CHECK(find(cautions_with(job, no_change), "film_under_sealer") == nullptr);
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

TEST_CASE("fast drying, dry air and wind are told") {
  Job job = mild_job();
  job.zones[0].shaded = false;
  job.mix.temperature = 28.0;
  const auto desert = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 33.0;
    hour.dew_point_c = 5.0;
    hour.wind_10m_m_s = 12.0;
    hour.cloud_fraction = 0.0;
  });
  CHECK(warns(desert, "evaporation_precautions", CautionLevel::caution));
  CHECK(warns(desert, "hot_weather", CautionLevel::caution));
  CHECK(warns(desert, "dry_air", CautionLevel::note));
  CHECK(warns(desert, "wind_crust", CautionLevel::caution));
  CHECK(warns(desert, "early_sheen", CautionLevel::caution));
}

TEST_CASE("rain and thunder count while the slab is soft, and not after") {
  const Job job = mild_job();
  const UtcTime soft = after_seconds(job.pour.start, 2.0 * 3600.0);
  const UtcTime hard = after_seconds(job.pour.start, 30.0 * 3600.0);
  const auto rain_at = [](UtcTime at) {
    return [at](ForecastHour& hour) {
      if (hour.at != at) return;
      hour.rain_mm = 2.0;
      hour.rain_chance = 0.8;
      hour.thunder = true;
    };
  };
  const auto wet = cautions_with(job, rain_at(soft));
  CHECK(warns(wet, "rain", CautionLevel::stop));
  CHECK(find(wet, "rain")->text.find("80% chance") != std::string::npos);
  CHECK(warns(wet, "thunder", CautionLevel::stop));
  const auto late = cautions_with(job, rain_at(hard));
  CHECK(find(late, "rain") == nullptr);
  CHECK(find(late, "thunder") == nullptr);
}

TEST_CASE("an old forecast and a short one are told") {
  CHECK(find(cautions_with(mild_job(), no_change, 17.0), "forecast_old") == nullptr);
  CHECK(warns(cautions_with(mild_job(), no_change, 19.0), "forecast_old", CautionLevel::caution));
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 1.2, 1.2);  // too small to be cut
  Forecast forecast = mild_forecast(job);
  const UtcTime end = after_seconds(job.pour.start, 10.0 * 3600.0);
  std::erase_if(forecast.hours, [end](const ForecastHour& hour) { return hour.at > end; });
  const auto series = WeatherSeries::from_forecast(forecast);
  const Practice practice = default_practice();
  const auto run = run_pour(job, *series.value, practice, {});
  REQUIRE(run.ok());
  const auto plan = plan_day(job, *run.value, practice);
  CHECK(find(plan.cautions, "forecast_short") == nullptr);
  const Caution* later = find(plan.cautions, "work_after_forecast");
  REQUIRE(later != nullptr);
  CHECK(later->level == CautionLevel::note);
  CHECK(later->text ==
        "after the forecast's end, Thu 6:00 PM: wash (pad). A later forecast tells when");
}

TEST_CASE("cold weather is a caution until blankets are laid for it") {
  // ACI 306R-10 (published): protected concrete may be placed in cold weather.
  Job job = mild_job();
  const UtcTime evening = after_seconds(job.pour.start, 14.0 * 3600.0);
  const auto cold_night = [evening](ForecastHour& hour) {
    if (hour.at >= evening) hour.air_c = 2.0;
    hour.dew_point_c = 0.0;
  };
  CHECK(warns(cautions_with(job, cold_night), "cold_weather", CautionLevel::caution));
  job.pour.curing = CuringKind::blanket;
  CHECK(warns(cautions_with(job, cold_night), "cold_weather", CautionLevel::note));
  const auto cold_day = [](ForecastHour& hour) {
    hour.air_c = 3.0;
    hour.dew_point_c = 0.0;
  };
  CHECK(warns(cautions_with(job, cold_day), "cold_weather", CautionLevel::caution));
}

TEST_CASE("a forecast that ends before the finishing is a fault") {
  const Job job = mild_job();
  Forecast forecast = mild_forecast(job);
  const UtcTime end = after_seconds(job.pour.start, 3.0 * 3600.0);
  std::erase_if(forecast.hours, [end](const ForecastHour& hour) { return hour.at > end; });
  const auto series = WeatherSeries::from_forecast(forecast);
  const Practice practice = default_practice();
  const auto run = run_pour(job, *series.value, practice, {});
  REQUIRE(run.ok());
  const auto plan = plan_day(job, *run.value, practice);
  CHECK(warns(plan.cautions, "forecast_short", CautionLevel::caution));
  CHECK(find(plan.cautions, "work_after_forecast") == nullptr);
}

TEST_CASE("bleed water that stands when the work opens is told by the hour") {
  // ACI 302.1R (from memory): no finishing over standing bleed water.
  Job job = mild_job();
  job.mix.w_cm = 0.55;
  const auto damp = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 15.0;
    hour.dew_point_c = 14.5;
    hour.wind_10m_m_s = 0.5;
  });
  const Caution* water = find(damp, "bleed_water");
  REQUIRE(water != nullptr);
  CHECK(water->at);
  CHECK(water->text.find("drag ") != std::string::npos);
  job.mix.w_cm = 0.42;
  const auto dry = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 22.0;
    hour.dew_point_c = 5.0;
    hour.wind_10m_m_s = 5.0;
  });
  CHECK(find(dry, "bleed_water") == nullptr);
}

TEST_CASE("a forecast that misses the pour is refused, with what to do") {
  const Job job = mild_job();
  Forecast forecast = mild_forecast(job);
  std::erase_if(forecast.hours, [&](const ForecastHour& hour) {
    return hour.at > after_seconds(job.pour.start, -3600.0);
  });
  const auto series = WeatherSeries::from_forecast(forecast);
  const auto run = run_pour(job, *series.value, default_practice(), {});
  REQUIRE(!run.ok());
  CHECK(render_all(run.diagnostics, "job.toml", {}) ==
        "job.toml: weather: the forecast ends Thu, May 14, 2026, 7:00 AM, before the last concrete "
        "is placed Thu, May 14, 2026, 8:15 AM\n"
        "  get a newer forecast, or correct the date of the pour\n");
}

TEST_CASE("work at night is told as it is: when it falls in the dark, not to start earlier") {
  Job job = mild_job();
  const SunTimes sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  for (const double after_sunset_h : {-0.4, 0.5, 2.5}) {
    job.pour.start = after_seconds(sun.set, after_sunset_h * 3600.0);
    const auto cautions = cautions_with(job, no_change);
    const Caution* dark = find(cautions, "dark");
    REQUIRE(dark != nullptr);
    CHECK(dark->text.find("this work is in the dark, from") == 0);
    CHECK(dark->text.find("earlier") == std::string::npos);
    REQUIRE(dark->at);
    CHECK(*dark->at >= job.pour.start);
    REQUIRE(dark->until);
    CHECK(*dark->until > *dark->at);
  }
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
  CHECK(find(cautions_with(job, no_change), "cover_in_the_way") == nullptr);
}

TEST_CASE("placing before sunrise is told, in the last of the twilight it is not") {
  Job job = mild_job();
  const SunTimes sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  job.pour.start = after_seconds(sun.rise, -2.0 * 3600.0);
  CHECK(warns(cautions_with(job, no_change), "dark", CautionLevel::caution));
  job.pour.start = after_seconds(sun.rise, -600.0);
  CHECK(find(cautions_with(job, no_change), "dark") == nullptr);
}

TEST_CASE("work that runs into the dark and a saw that comes too late are told") {
  Job job = mild_job();
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(16));
  CHECK(warns(cautions_with(job, no_change), "dark", CautionLevel::caution));

  Job tied = mild_job();
  tied.zones[0].tied = true;
  tied.zones[0].shaded = false;
  tied.pour.saws = {SawKind::wet};
  const auto cooling = [&tied](ForecastHour& hour) {
    const double hours = seconds_between(tied.pour.start, hour.at) / 3600.0;
    hour.cloud_fraction = 0.0;
    hour.air_c = hours > 7.0 ? 2.0 : 22.0;
    hour.dew_point_c = 0.0;
  };
  tied.mix.aggregate = Aggregate::quartzite;  // the wet saw waits for 1300 psi
  CHECK(warns(cautions_with(tied, cooling), "saw_too_late", CautionLevel::stop));
}

TEST_CASE("under plastic or blankets one is told to saw before they go on, of what is sawn") {
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 8, 4);
  for (const CuringKind curing : {CuringKind::plastic, CuringKind::blanket}) {
    job.pour.curing = curing;
    CHECK(warns(cautions_with(job, no_change), "saw_before_cover", CautionLevel::caution));
  }
  job.pour.curing = CuringKind::film;
  CHECK(find(cautions_with(job, no_change), "saw_before_cover") == nullptr);
  Job uncut = mild_job();
  uncut.zones[0].outline = test::rectangle(0, 0, 2, 2);
  uncut.pour.curing = CuringKind::blanket;
  CHECK(find(cautions_with(uncut, no_change), "saw_before_cover") == nullptr);
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

TEST_CASE("water that stands until the finish is too stiff wants care: it is dragged off") {
  // Damp, still and overcast: nothing dries, and the bleed water stays on the slab. It is dragged
  // off, and not worked in (ACI 302.1R, from memory).
  Job job = mild_job();
  job.zones[0].finish = Finish::broom;
  job.zones[0].shaded = false;
  job.mix.temperature = 21.0;
  const std::vector<Caution> cautions = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 12.0;
    hour.dew_point_c = 11.5;
    hour.wind_10m_m_s = 0.3;
  });
  CHECK(warns(cautions, "bleed_water", CautionLevel::caution));
  const Caution* water = find(cautions, "bleed_water");
  REQUIRE(water != nullptr);
  CHECK(water->loss == Loss::finish);
  CHECK(water->text.find("water stands on it until ") == 0);
  CHECK(judge(cautions).verdict == Verdict::care);
  // A day that dries it is good.
  CHECK(find(cautions_with(job, [](ForecastHour&) {}), "bleed_water") == nullptr);
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
