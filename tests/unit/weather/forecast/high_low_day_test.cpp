#include "slabtide/weather/forecast/high_low_day.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "slabtide/weather/site/weather_series.h"
#include "support/plain_forecast.h"
#include "weather/forecast/high_low_curve.h"

using namespace slabtide;
using slabtide::testing::at_utc;

namespace {

const Date pour_date(2026, 5, 14);

TypedWeather spring_day() {
  TypedWeather weather;
  weather.high_c = 21.0;
  weather.low_c = 8.0;
  weather.next_high_c = 25.0;
  weather.next_low_c = 3.0;
  weather.dew_point_c = 6.0;
  weather.wind_10m_m_s = 4.0;
  weather.cloud = {.night = 0.1, .morning = 0.2, .afternoon = 0.5, .evening = 0.9};
  return weather;
}

Site site_at(double latitude_deg, double longitude_deg, const char* rule) {
  Site site;
  site.latitude_deg = latitude_deg;
  site.longitude_deg = longitude_deg;
  site.time_zone = *TimeZone::from_posix_rule("a zone", rule).zone;
  return site;
}

Site northern_town() { return site_at(44.9, -91.9, "CST6CDT,M3.2.0,M11.1.0"); }

UtcTime local(const Site& site, Date date, int hour) {
  return site.time_zone.utc_from_local(LocalTime(date, boost::posix_time::hours(hour))).utc;
}

struct Extremes {
  double min = std::numeric_limits<double>::infinity();
  double max = -std::numeric_limits<double>::infinity();
};

/// Extremes of the air between two local hours of the pour's day; hours over 24 are on the next
/// day.
Extremes air_between(const Forecast& forecast, const Site& site, int from, int to) {
  const WeatherSeries series = *WeatherSeries::from_forecast(forecast).value;
  Extremes extremes;
  const UtcTime start = local(site, pour_date, 0);
  for (int i = from * 12; i <= to * 12; ++i) {
    const double air_c = series.at(after_seconds(start, 300.0 * i)).air_c;
    extremes.min = std::min(extremes.min, air_c);
    extremes.max = std::max(extremes.max, air_c);
  }
  return extremes;
}

double mean_wind(const Forecast& forecast, UtcTime from) {
  const WeatherSeries series = *WeatherSeries::from_forecast(forecast).value;
  double sum = 0.0;
  constexpr int steps = 24 * 12;
  for (int i = 0; i < steps; ++i)
    sum += series.at(after_seconds(from, 300.0 * (i + 0.5))).wind_10m_m_s;
  return sum / steps;
}

}  // namespace

TEST_CASE("the day before to three days on are inside, without a gap") {
  const Site site = northern_town();
  const Forecast forecast = high_low_forecast(spring_day(), site, pour_date);
  CHECK(forecast.source == "typed high and low");
  CHECK(forecast.hours.front().at == local(site, Date(2026, 5, 13), 0));
  CHECK(forecast.hours.back().at == local(site, Date(2026, 5, 17), 0));
  const Parsed<WeatherSeries> series = WeatherSeries::from_forecast(forecast);
  CHECK(series.ok());
  CHECK(series.diagnostics.empty());
}

TEST_CASE("each day and night reaches its own high and low") {
  const Site site = northern_town();
  const Forecast forecast = high_low_forecast(spring_day(), site, pour_date);
  CHECK(air_between(forecast, site, 0, 12).min == doctest::Approx(8.0).epsilon(0.002));
  CHECK(air_between(forecast, site, 8, 20).max == doctest::Approx(21.0).epsilon(0.001));
  CHECK(air_between(forecast, site, 20, 36).min == doctest::Approx(3.0).epsilon(0.004));
  CHECK(air_between(forecast, site, 32, 44).max == doctest::Approx(25.0).epsilon(0.001));
}

TEST_CASE("where no next day is typed the morrow is like the day") {
  TypedWeather weather = spring_day();
  weather.next_high_c.reset();
  weather.next_low_c.reset();
  const Site site = northern_town();
  const Forecast forecast = high_low_forecast(weather, site, pour_date);
  CHECK(air_between(forecast, site, 20, 36).min == doctest::Approx(8.0).epsilon(0.002));
  CHECK(air_between(forecast, site, 32, 44).max == doctest::Approx(21.0).epsilon(0.001));
}

TEST_CASE("the dew point is constant, the low where not given, never above the air") {
  TypedWeather weather = spring_day();
  const Forecast typed = high_low_forecast(weather, northern_town(), pour_date);
  weather.dew_point_c.reset();
  const Forecast untyped = high_low_forecast(weather, northern_town(), pour_date);
  for (std::size_t i = 0; i < typed.hours.size(); ++i) {
    CHECK(*typed.hours[i].dew_point_c == std::min(6.0, *typed.hours[i].air_c));
    CHECK(*untyped.hours[i].dew_point_c == std::min(8.0, *untyped.hours[i].air_c));
  }
}

TEST_CASE("the wind keeps its daily mean, rests at night and peaks near 15 h") {
  const Site site = northern_town();
  const Forecast forecast = high_low_forecast(spring_day(), site, pour_date);
  CHECK(mean_wind(forecast, local(site, pour_date, 4)) == doctest::Approx(4.0).epsilon(0.005));
  const WeatherSeries series = *WeatherSeries::from_forecast(forecast).value;
  const auto wind_at = [&](int hour) {
    return series.at(local(site, pour_date, hour)).wind_10m_m_s;
  };
  CHECK(wind_at(3) == doctest::Approx(0.6 * 4.0));
  CHECK(wind_at(15) > wind_at(12));
  CHECK(wind_at(15) > wind_at(18));
}

TEST_CASE("clouds follow the part of the day on the local clock") {
  const Site site = northern_town();
  const WeatherSeries series =
      *WeatherSeries::from_forecast(high_low_forecast(spring_day(), site, pour_date)).value;
  const auto cloud_at = [&](int hour) {
    return series.at(local(site, pour_date, hour)).cloud_fraction;
  };
  CHECK(cloud_at(2) == doctest::Approx(0.1));
  CHECK(cloud_at(6) == doctest::Approx(0.2));
  CHECK(cloud_at(12) == doctest::Approx(0.5));
  CHECK(cloud_at(17) == doctest::Approx(0.9));
  CHECK(cloud_at(21) == doctest::Approx(0.1));
}

TEST_CASE("the southern hemisphere's day is as long as its season says") {
  const Site site = site_at(-33.9, 151.2, "AEST-10AEDT,M10.1.0,M4.1.0/3");
  const Forecast forecast = high_low_forecast(spring_day(), site, pour_date);
  CHECK(air_between(forecast, site, 0, 12).min == doctest::Approx(8.0).epsilon(0.002));
  CHECK(air_between(forecast, site, 8, 18).max == doctest::Approx(21.0).epsilon(0.001));
}

TEST_CASE("polar day and polar night still have a high and a low") {
  for (const Date date : {Date(2026, 6, 21), Date(2026, 12, 21)}) {
    const Site site = site_at(78.0, 15.6, "CET-1CEST,M3.5.0,M10.5.0/3");
    const Forecast forecast = high_low_forecast(spring_day(), site, date);
    Extremes extremes;
    for (const ForecastHour& row : forecast.hours) {
      REQUIRE(std::isfinite(*row.air_c));
      extremes.min = std::min(extremes.min, *row.air_c);
      extremes.max = std::max(extremes.max, *row.air_c);
    }
    CHECK(extremes.min == doctest::Approx(3.0).epsilon(0.01));
    CHECK(extremes.max == doctest::Approx(25.0).epsilon(0.01));
  }
}

TEST_CASE("the clock's change does not move the day") {
  // The same place on a clock with and without the spring change of 8 March 2026.
  const Date date(2026, 3, 8);
  const Site with_dst = northern_town();
  const Site without = site_at(44.9, -91.9, "CST6");
  const WeatherSeries a =
      *WeatherSeries::from_forecast(high_low_forecast(spring_day(), with_dst, date)).value;
  const WeatherSeries b =
      *WeatherSeries::from_forecast(high_low_forecast(spring_day(), without, date)).value;
  for (int hour = 0; hour < 60; ++hour) {
    const UtcTime at = at_utc(date, 6.0 + hour);
    CHECK(a.at(at).air_c == doctest::Approx(b.at(at).air_c).epsilon(0.002));
    CHECK(a.at(at).wind_10m_m_s == doctest::Approx(b.at(at).wind_10m_m_s).epsilon(0.002));
  }
}

TEST_CASE("typed weather that cannot be is refused") {
  const auto refused = [](auto change) {
    TypedWeather weather = spring_day();
    change(weather);
    CHECK_THROWS_AS(high_low_forecast(weather, northern_town(), pour_date), std::invalid_argument);
  };
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  refused([](TypedWeather& w) { w.high_c = w.low_c - 1.0; });
  refused([&](TypedWeather& w) { w.high_c = not_a_number; });
  refused([&](TypedWeather& w) { w.dew_point_c = not_a_number; });
  refused([](TypedWeather& w) { w.wind_10m_m_s = -1.0; });
  refused([](TypedWeather& w) { w.cloud.evening = 1.5; });
}

TEST_CASE("a span of the curve refuses hours and days that are none") {
  const HighLowSpan span{.rise_h = 6.0,
                         .set_h = 18.0,
                         .next_rise_h = 30.0,
                         .low_c = 15.0,
                         .high_c = 30.0,
                         .next_low_c = 12.0};
  CHECK_THROWS_AS(high_low_air_c(span, 5.0), std::invalid_argument);
  CHECK_THROWS_AS(high_low_air_c(span, 30.0), std::invalid_argument);
  HighLowSpan no_night = span;
  no_night.set_h = 30.0;
  CHECK_THROWS_AS(high_low_air_c(no_night, 12.0), std::invalid_argument);
  CHECK(high_low_air_c(span, low_hour(30.0)) == doctest::Approx(12.0));
}

TEST_CASE("typed humidity is that of the day's high") {
  TypedWeather weather = spring_day();
  weather.high_c = 30.0;
  weather.low_c = 20.0;
  weather.dew_point_c.reset();
  weather.humidity_at_high = 0.5;
  const Site site = northern_town();
  const auto series =
      *WeatherSeries::from_forecast(high_low_forecast(weather, site, pour_date)).value;
  // Magnus form: 30 °C at 50 % has its dew point at 18.45 °C; observed: 18.448.
  CHECK(series.at(local(site, pour_date, 15)).dew_point_c ==
        doctest::Approx(18.45).epsilon(0.0005));
  weather.humidity_at_high = 1.4;
  CHECK_THROWS_AS(high_low_forecast(weather, site, pour_date), std::invalid_argument);
}
