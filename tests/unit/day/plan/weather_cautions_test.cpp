#include <doctest/doctest.h>

#include "mild_day.h"
#include "slabtide/core/units.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/weather/sky/sun.h"

// The cautions of weather, light and forecast: each is triggered by a day made for it.

namespace slabtide {

using namespace test;

TEST_CASE("a crew in the heat is told the heat index and its hours") {
  const Job job = mild_job();
  const auto at_f = [&job](double air_f, double dew_f) {
    return cautions_with(job, [&](ForecastHour& hour) {
      hour.air_c = celsius_from_fahrenheit(air_f);
      hour.dew_point_c = celsius_from_fahrenheit(dew_f);
    });
  };
  CHECK(find_caution(at_f(84.0, 60.0), "heat") == nullptr);
  // 90 °F at 69 °F dew point is 50 % humidity: 95 °F on the NWS chart, from memory.
  const auto hot = at_f(90.0, 69.0);
  const Caution* heat = find_caution(hot, "heat");
  REQUIRE(heat != nullptr);
  CHECK(heat->level == CautionLevel::note);
  CHECK(heat->loss == Loss::people);
  CHECK(heat->text.find("over 91 °F from ") != std::string::npos);
  CHECK(heat->text.find("over 103 °F") == std::string::npos);
  const auto hotter = at_f(98.0, 74.0);
  REQUIRE(find_caution(hotter, "heat") != nullptr);
  CHECK(find_caution(hotter, "heat")->level == CautionLevel::caution);
  CHECK(find_caution(hotter, "heat")->text.find("over 103 °F from ") != std::string::npos);
}

TEST_CASE("in the heat each hand of the job is told how long they are in it") {
  Job job = mild_job();
  job.crew.finishers = 2;
  job.crew.hands = {{"Ann", 1.0, std::nullopt, std::nullopt, false}};
  const auto hot = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = celsius_from_fahrenheit(98.0);
    hour.dew_point_c = celsius_from_fahrenheit(74.0);
  });
  REQUIRE(find_caution(hot, "heat") != nullptr);
  // It is over both bands all day, so for as long as she is there.
  const std::string& text = find_caution(hot, "heat")->text;
  const auto told = text.find(". Over 91 °F: Ann ");
  REQUIRE(told != std::string::npos);
  CHECK(text.find(" of it over 103 °F)", told) != std::string::npos);
  CHECK(text.find("finisher 2 ", told) != std::string::npos);
}

TEST_CASE("cold air, cold concrete, frozen ground and frost are told") {
  Job job = mild_job();
  const auto cold = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 3.0;
    hour.dew_point_c = -2.0;
  });
  CHECK(warns(cold, "cold_weather", CautionLevel::caution));
  CHECK(find_caution(cold, "cold_concrete") == nullptr);
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
  CHECK(find_caution(bare, "freezing")->text.find("blankets on well before") != std::string::npos);
  job.pour.curing = CuringKind::blanket;
  const auto under_blankets = cautions_with(job, hard_frost);
  REQUIRE(warns(under_blankets, "freezing", CautionLevel::stop));
  CHECK(find_caution(under_blankets, "freezing")->text.find("even under its blankets") !=
        std::string::npos);
}

TEST_CASE("concrete ordered at the least that cold weather asks for is warm enough") {
  // ACI 306R-10: 55 °F in sections under 12 in.
  Job job = mild_job();
  const auto cool = [](ForecastHour& hour) { hour.air_c = 3.0; };
  job.mix.temperature = celsius_from_fahrenheit(55.0);
  CHECK(find_caution(cautions_with(job, cool), "cold_concrete") == nullptr);
  job.mix.temperature = celsius_from_fahrenheit(54.0);
  CHECK(warns(cautions_with(job, cool), "cold_concrete", CautionLevel::caution));
}

TEST_CASE("hot concrete is stopped at the published limit") {
  Job job = mild_job();
  job.mix.temperature = 35.1;  // 95 °F is 35.0 (ACI 305.1-14, published)
  CHECK(warns(cautions_with(job, no_change), "hot_concrete", CautionLevel::stop));
  job.mix.temperature = 34.9;
  CHECK(find_caution(cautions_with(job, no_change), "hot_concrete") == nullptr);
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
  CHECK(find_caution(wet, "rain")->text.find("80% chance") != std::string::npos);
  CHECK(warns(wet, "thunder", CautionLevel::stop));
  const auto late = cautions_with(job, rain_at(hard));
  CHECK(find_caution(late, "rain") == nullptr);
  CHECK(find_caution(late, "thunder") == nullptr);
}

TEST_CASE("an old forecast and a short one are told") {
  CHECK(find_caution(cautions_with(mild_job(), no_change, 17.0), "forecast_old") == nullptr);
  CHECK(warns(cautions_with(mild_job(), no_change, 19.0), "forecast_old", CautionLevel::caution));
  Job job = mild_job();
  job.zones[0].outline = test::rectangle(0, 0, 1.2, 1.2);  // too small to be cut
  const std::vector<Caution> cautions = cautions_until(job, 10.0);
  CHECK(find_caution(cautions, "forecast_short") == nullptr);
  const Caution* later = find_caution(cautions, "work_after_forecast");
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
  // The slab is worked on bare, however cool the day; not in frost.
  const auto cold_day = [](ForecastHour& hour) {
    hour.air_c = 3.0;
    hour.dew_point_c = 0.0;
  };
  CHECK(warns(cautions_with(job, cold_day), "cold_weather", CautionLevel::note));
  const auto frost = [](ForecastHour& hour) {
    hour.air_c = -1.0;
    hour.dew_point_c = -5.0;
  };
  CHECK(warns(cautions_with(job, frost), "cold_weather", CautionLevel::caution));
}

TEST_CASE("a forecast that ends before the finishing is a fault") {
  const Job job = mild_job();
  const std::vector<Caution> cautions = cautions_until(job, 3.0);
  CHECK(warns(cautions, "forecast_short", CautionLevel::caution));
  CHECK(find_caution(cautions, "work_after_forecast") == nullptr);
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
  const Caution* water = find_caution(damp, "bleed_water");
  REQUIRE(water != nullptr);
  CHECK(water->at);
  CHECK(water->text.find("drag ") != std::string::npos);
  job.mix.w_cm = 0.42;
  const auto dry = cautions_with(job, [](ForecastHour& hour) {
    hour.air_c = 22.0;
    hour.dew_point_c = 5.0;
    hour.wind_10m_m_s = 5.0;
  });
  CHECK(find_caution(dry, "bleed_water") == nullptr);
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
    const Caution* dark = find_caution(cautions, "dark");
    REQUIRE(dark != nullptr);
    CHECK(dark->text.find("this work is in the dark, from") == 0);
    CHECK(dark->text.find("earlier") == std::string::npos);
    REQUIRE(dark->at);
    CHECK(*dark->at >= job.pour.start);
    REQUIRE(dark->until);
    CHECK(*dark->until > *dark->at);
  }
}

TEST_CASE("placing before sunrise is told, in the last of the twilight it is not") {
  Job job = mild_job();
  const SunTimes sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  job.pour.start = after_seconds(sun.rise, -2.0 * 3600.0);
  CHECK(warns(cautions_with(job, no_change), "dark", CautionLevel::caution));
  job.pour.start = after_seconds(sun.rise, -600.0);
  CHECK(find_caution(cautions_with(job, no_change), "dark") == nullptr);
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
  const Caution* water = find_caution(cautions, "bleed_water");
  REQUIRE(water != nullptr);
  CHECK(water->loss == Loss::finish);
  CHECK(water->text.find("water stands on it until ") == 0);
  CHECK(judge(cautions).verdict == Verdict::care);
  // A day that dries it is good.
  CHECK(find_caution(cautions_with(job, [](ForecastHour&) {}), "bleed_water") == nullptr);
}

}  // namespace slabtide
