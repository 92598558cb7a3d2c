#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/caution.h"
#include "support/plain_forecast.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide::test {

/// One shaded stamped pad under a mild, cloudy sky: nothing to watch for.
inline Job mild_job() {
  Job job = sample_job({zone_named("pad", rectangle(0, 0, 4, 4), Finish::stamp)});
  job.zones[0].shaded = true;
  job.mix.temperature = 18.0;
  job.mix.air_fraction = 0.06;
  job.order.short_load_m3 = 0.0;
  job.pour.saws = {SawKind::early_entry};
  return job;
}

/// Four flat days around the pour: 17 °C, dew point 8 °C, 2 m/s, overcast.
inline Forecast mild_forecast(const Job& job) {
  const UtcTime from(job.pour.date - boost::gregorian::days(1));
  Forecast forecast = testing::plain_forecast(from, 96);
  for (ForecastHour& hour : forecast.hours) {
    hour.air_c = 17.0;
    hour.wind_10m_m_s = 2.0;
    hour.cloud_fraction = 1.0;
  }
  return forecast;
}

inline std::vector<Caution> cautions_of(const Job& job, const Forecast& forecast,
                                        std::optional<double> age_h = std::nullopt) {
  const auto series = WeatherSeries::from_forecast(forecast);
  REQUIRE(series.ok());
  const Practice practice = default_practice();
  const auto run = run_pour(job, *series.value, practice, {});
  REQUIRE(run.ok());
  return plan_day(job, *run.value, practice, age_h).cautions;
}

/// On a mild day with a change made to each of its hours.
template <class Change>
std::vector<Caution> cautions_with(const Job& job, Change change,
                                   std::optional<double> age_h = std::nullopt) {
  Forecast forecast = mild_forecast(job);
  for (ForecastHour& hour : forecast.hours) change(hour);
  return cautions_of(job, forecast, age_h);
}

/// On a mild day whose forecast ends so many hours after the start.
inline std::vector<Caution> cautions_until(const Job& job, double hours) {
  Forecast forecast = mild_forecast(job);
  const UtcTime end = after_seconds(job.pour.start, hours * 3600.0);
  std::erase_if(forecast.hours, [end](const ForecastHour& hour) { return hour.at > end; });
  return cautions_of(job, forecast);
}

inline const Caution* find_caution(const std::vector<Caution>& cautions, std::string_view code) {
  const auto found = std::find_if(cautions.begin(), cautions.end(),
                                  [code](const Caution& c) { return c.code == code; });
  return found == cautions.end() ? nullptr : &*found;
}

inline bool warns(const std::vector<Caution>& cautions, std::string_view code, CautionLevel level) {
  const Caution* caution = find_caution(cautions, code);
  if (caution == nullptr) return false;
  CHECK(!caution->text.empty());
  CHECK(!caution->title.empty());
  CHECK(!caution->source.empty());
  return caution->level == level;
}

inline constexpr auto no_change = [](ForecastHour&) {};

}  // namespace slabtide::test
