#include <string>

#include <doctest/doctest.h>

#include "unit/weather/readers/forecast_test_support.h"
#include "weather/readers/forecast_csv.h"
#include "weather/readers/read_forecast.h"

namespace slabtide {
namespace {

using testing::central_time;
using testing::rows;
using testing::told;
using testing::utc;

Parsed<Forecast> read(std::string_view text) { return read_forecast(text, {central_time(), {}}); }

/// The findings about a table with the usual header and these rows.
std::string told_of_rows(const std::string& lines) {
  const std::string text = "time,air_f,dew_point_f,wind_mph\n" + lines;
  return told(read(text), text);
}

std::string told_of(const std::string& text) { return told(read(text), text); }

}  // namespace

TEST_CASE("an hourly table in US units") {
  const std::string text =
      "# source: typed from the radio\n"
      "# issued: 2026-05-13T16:00-05:00\n"
      "\n"
      "time,air_f,dew_point_f,wind_mph,gust_mph,cloud_percent,solar_w_m2,rain_in,"
      "rain_chance_percent,thunder\n"
      "2026-05-14T08:00,50,41,10,20,25,300,0.1,40,no\n"
      "2026-05-14T09:00,59,41,10,,,,,,yes\n";
  const Parsed<Forecast> reading = read(text);
  REQUIRE_MESSAGE(reading.ok(), told(reading, text));
  CHECK(reading.diagnostics.empty());
  CHECK(reading.value->source == "hourly table, typed from the radio");
  CHECK(reading.value->issued == utc("2026-05-13T21:00Z"));
  CHECK(rows(*reading.value) ==
        "2026-05-14T13:00:00+00:00 air 10.00 dew 5.00 wind 4.47 gust 8.94 cloud 0.25 sun 300.00 "
        "rain 2.54 chance 0.40\n"
        "2026-05-14T14:00:00+00:00 air 15.00 dew 5.00 wind 4.47 thunder\n");
}

TEST_CASE("the SI twins in any order, offsets, quotes, CRLF and a byte-order mark") {
  const std::string text =
      "\xEF\xBB\xBF\"wind_km_h\", TIME ,rain_mm,dew_point_c,\"air_c\"\r\n"
      "36,2026-05-14T13:00Z,2,5,\"10\"\r\n"
      "# a word in between\r\n"
      "18,\"2026-05-14 09:00-05:00\",0,5,15\r\n";
  const Parsed<Forecast> reading = read(text);
  REQUIRE_MESSAGE(reading.ok(), told(reading, text));
  CHECK(rows(*reading.value) ==
        "2026-05-14T13:00:00+00:00 air 10.00 dew 5.00 wind 10.00 rain 2.00\n"
        "2026-05-14T14:00:00+00:00 air 15.00 dew 5.00 wind 5.00 rain 0.00\n");
}

TEST_CASE("wind in m/s and knots") {
  const auto first_wind = [](const std::string& unit) {
    const auto reading = read("time,air_c,dew_point_c," + unit + "\n2026-05-14T08:00,9,3,7\n");
    return reading.value.value().hours.front().wind_10m_m_s.value();
  };
  CHECK(first_wind("wind_m_s") == 7.0);
  CHECK(first_wind("wind_kn") == doctest::Approx(7.0 * 1852.0 / 3600.0));
}

TEST_CASE("humidity becomes dew point; a dew point given beside it counts") {
  const std::string text =
      "time,air_c,humidity_percent,dew_point_c,wind_m_s\n"
      "2026-05-14T08:00,30,50,,1\n"
      "2026-05-14T09:00,30,50,12,1\n";
  const Parsed<Forecast> reading = read(text);
  REQUIRE_MESSAGE(reading.ok(), told(reading, text));
  // 18.45 °C: Magnus with 17.625 and 243.04 °C, Alduchov & Eskridge 1996, worked by hand.
  CHECK(reading.value->hours[0].dew_point_c.value() == doctest::Approx(18.45).epsilon(0.0005));
  CHECK(reading.value->hours[1].dew_point_c == 12.0);
}

TEST_CASE("a dew point a rounding above the air is the air's") {
  const Parsed<Forecast> reading =
      read("time,air_c,dew_point_c,wind_m_s\n2026-05-14T08:00,9,10,1\n");
  REQUIRE(reading.ok());
  CHECK(reading.value->hours.front().dew_point_c == 9.0);
}

TEST_CASE("the hour that happens twice is told apart by order") {
  const Parsed<Forecast> reading = read(
      "time,air_c,dew_point_c,wind_m_s\n"
      "2026-11-01T00:00,5,1,1\n"
      "2026-11-01T01:00,4,1,1\n"
      "2026-11-01T01:00,3,1,1\n"
      "2026-11-01T02:00,2,1,1\n");
  REQUIRE(reading.ok());
  CHECK(reading.diagnostics.empty());
  CHECK(rows(*reading.value) ==
        "2026-11-01T05:00:00+00:00 air 5.00 dew 1.00 wind 1.00\n"
        "2026-11-01T06:00:00+00:00 air 4.00 dew 1.00 wind 1.00\n"
        "2026-11-01T07:00:00+00:00 air 3.00 dew 1.00 wind 1.00\n"
        "2026-11-01T08:00:00+00:00 air 2.00 dew 1.00 wind 1.00\n");
}

TEST_CASE("that hour a third time is a duplicate") {
  CHECK(told_of_rows("2026-11-01T01:00,4,1,1\n"
                     "2026-11-01T01:00,3,1,1\n"
                     "2026-11-01T01:00,2,1,1\n") ==
        "4:1: time: the same time as the row before\n"
        "    2026-11-01T01:00,2,1,1\n"
        "    ^\n"
        "  also here: line 3\n"
        "  keep one of the two rows\n");
}

TEST_CASE("the night the clocks go forward has no gap, and no hour that does not exist") {
  CHECK(told_of_rows("2026-03-08T01:00,40,30,1\n2026-03-08T03:00,40,30,1\n").empty());
  CHECK(told_of_rows("2026-03-08T02:00,40,30,1\n") ==
        "2:1: time: '2026-03-08T02:00' does not exist in America/Chicago: the clocks go forward "
        "over it\n"
        "    2026-03-08T02:00,40,30,1\n"
        "    ^\n"
        "  write local time as 2026-05-14T08:00, or with an offset as 2026-05-14T08:00-05:00\n");
}

TEST_CASE("missing rows up to three hours apart are filled and told") {
  const std::string text =
      "time,air_f,dew_point_f,wind_mph\n"
      "2026-05-14T08:00,50,41,10\n"
      "2026-05-14T11:00,50,41,10\n";
  const Parsed<Forecast> reading = read(text);
  REQUIRE(reading.ok());
  CHECK(told(reading, text) ==
        "3:1: time: warning: no row between Thu 08:00 and Thu 11:00, filled from the rows around\n"
        "    2026-05-14T11:00,50,41,10\n"
        "    ^\n");
  REQUIRE(reading.value->notes.size() == 1);
  CHECK(reading.value->notes.front() ==
        "no hours between Thu 08:00 and Thu 11:00, filled from the hours around");
}

TEST_CASE("missing rows further apart are an error") {
  CHECK(told_of_rows("2026-05-14T08:00,50,41,10\n2026-05-14T12:00,50,41,10\n") ==
        "3:1: time: no row between Thu 08:00 and Thu 12:00, too long to fill\n"
        "    2026-05-14T12:00,50,41,10\n"
        "    ^\n"
        "  give the missing hours; up to three hours apart are filled\n");
}

TEST_CASE("a missing value is filled and told with its column") {
  CHECK(told_of_rows("2026-05-14T08:00,50,41,10\n"
                     "2026-05-14T09:00,50,41,\n"
                     "2026-05-14T10:00,50,41,10\n") ==
        "3:24: wind_mph: warning: no wind between Thu 08:00 and Thu 10:00, filled from the rows "
        "around\n"
        "    2026-05-14T09:00,50,41,\n"
        "                           ^\n");
}

TEST_CASE("a value missing for longer is an error") {
  const std::string text =
      "time,air_f,humidity_percent,wind_mph\n"
      "2026-05-14T08:00,50,41,10\n"
      "2026-05-14T09:00,50,,10\n"
      "2026-05-14T10:00,50,,10\n"
      "2026-05-14T11:00,50,,10\n"
      "2026-05-14T12:00,50,41,10\n";
  CHECK(told_of(text) ==
        "3:21: humidity_percent: no dew point between Thu 08:00 and Thu 12:00, too long to fill\n"
        "    2026-05-14T09:00,50,,10\n"
        "                        ^\n"
        "  give the missing hours; up to three hours apart are filled\n");
}

TEST_CASE("hours at the ends that cannot be used are left out and told") {
  const Parsed<Forecast> reading = read(
      "time,air_f,dew_point_f,wind_mph\n"
      "2026-05-14T08:00,,41,10\n"
      "2026-05-14T09:00,50,41,10\n"
      "2026-05-14T10:00,50,41,10\n"
      "2026-05-14T11:00,50,41,\n"
      "2026-05-14T12:00,50,41,\n");
  REQUIRE(reading.ok());
  CHECK(reading.value->hours.size() == 2);
  REQUIRE(reading.value->notes.size() == 2);
  CHECK(reading.value->notes[0] ==
        "left out the first 1 hour, without air temperature, moisture or wind");
  CHECK(reading.value->notes[1] ==
        "left out the last 2 hours, without air temperature, moisture or wind");
}

TEST_CASE("disorder, duplicates and rows too close") {
  const auto message = [](const std::string& second) {
    const std::string told = told_of_rows("2026-05-14T08:00,50,41,10\n" + second + ",50,41,10\n");
    return told.substr(0, told.find('\n'));
  };
  CHECK(message("2026-05-14T08:00") == "3:1: time: the same time as the row before");
  CHECK(message("2026-05-14T07:00") == "3:1: time: earlier than the row before");
  CHECK(message("2026-05-14T08:30") == "3:1: time: less than an hour after the row before");
  CHECK(message("2026-05-14T13:00Z") == "3:1: time: the same time as the row before");
}

TEST_CASE("impossible values") {
  const auto message = [](const std::string& column, const std::string& value) {
    const std::string text = "time," + column +
                             ",air_c,humidity_percent,dew_point_f,wind_m_s\n2026-05-14T08:00," +
                             value + ",20,40,40,2\n";
    const std::string all = told_of(text);
    return all.substr(0, all.find('\n'));
  };
  CHECK(message("cloud_percent", "140") ==
        "2:18: cloud_percent: cloud of 140 % is impossible, expected 0 to 100 %");
  CHECK(message("gust_mph", "-4") ==
        "2:18: gust_mph: gust of -4 mph is impossible, expected 0 to 268 mph");
  CHECK(message("rain_in", "15") ==
        "2:18: rain_in: rain of 15 in is impossible, expected 0 to 13.7 in");
  CHECK(message("solar_w_m2", "1600") ==
        "2:18: solar_w_m2: sun of 1600 W/m2 is impossible, expected 0 to 1500 W/m2");
  CHECK(message("rain_chance_percent", "101") ==
        "2:18: rain_chance_percent: chance of rain of 101 % is impossible, expected 0 to 100 %");
}

TEST_CASE("humidity of 140 percent, whole message") {
  CHECK(told_of("time,air_f,humidity_percent,wind_mph\n2026-05-14T08:00,50,140,5\n") ==
        "2:21: humidity_percent: humidity of 140 % is impossible, expected 1 to 100 %\n"
        "    2026-05-14T08:00,50,140,5\n"
        "                        ^\n");
}

TEST_CASE("a dew point well above the air contradicts it") {
  CHECK(told_of_rows("2026-05-14T08:00,50,60,5\n") ==
        "2:1: the dew point (60 °F) is above the air temperature (50 °F)\n"
        "    2026-05-14T08:00,50,60,5\n"
        "    ^\n");
}

TEST_CASE("what is no number") {
  for (const char* const word : {"null", "nan", "inf", "n/a", "5 mph", "1e999", "--", "0x10"}) {
    CAPTURE(word);
    const std::string line = std::string{"2026-05-14T08:00,50,41,"} + word;
    CHECK(told_of_rows(line + "\n") == "2:24: wind_mph: '" + std::string{word} +
                                           "' is not a number\n    " + line +
                                           "\n                           ^\n"
                                           "  leave the field empty where the value is missing\n");
  }
}

TEST_CASE("what is no time") {
  for (const char* const word : {"5/14/2026 8:00 AM", "2026-05-14", "08:00", "2026-13-14T08:00",
                                 "2026-05-14T25:00", "1812-05-14T08:00", "9999-12-31T23:00",
                                 "10000-01-01T00:00", "", "2026-05-14T08:00+99:00"}) {
    CAPTURE(word);
    const std::string told = told_of_rows(std::string{word} + ",50,41,5\n");
    CHECK(told.starts_with("2:1: time: '" + std::string{word} + "' is not "));
  }
}

TEST_CASE("an unknown column suggests the nearest") {
  CHECK(told_of("time,air_f,dewpoint_f,wind_mph\n2026-05-14T08:00,50,41,5\n") ==
        "1:12: unknown column 'dewpoint_f'\n"
        "    time,air_f,dewpoint_f,wind_mph\n"
        "               ^\n"
        "  did you mean dew_point_f?\n");
}

TEST_CASE("an unknown column like no other lists what is known") {
  const std::string told = told_of("time,air_f,barometer,wind_mph\n");
  CHECK(told.starts_with("1:12: unknown column 'barometer'\n"));
  CHECK(told.find("  the columns known are time, air_f, air_c, ") != std::string::npos);
}

TEST_CASE("columns twice, one quantity twice, columns without a name") {
  const auto message = [](const std::string& head) {
    const std::string all = told_of(head + "\n");
    return all.substr(0, all.find('\n'));
  };
  CHECK(message("time,air_f,air_f,dew_point_f,wind_mph") ==
        "1:12: air_f: the column is there twice");
  CHECK(message("time,air_f,air_c,dew_point_f,wind_mph") ==
        "1:12: air_c: the same quantity as air_f");
  CHECK(message("time,air_f,,dew_point_f,wind_mph") == "1:12: a column without a name");
}

TEST_CASE("columns that are missing") {
  const std::string told = told_of("cloud_percent,rain_in\n3,4\n");
  CHECK(told.find("no column for the time (time)") != std::string::npos);
  CHECK(told.find("no column for the air temperature (air_f or air_c)") != std::string::npos);
  CHECK(told.find("no column for the moisture (") != std::string::npos);
  CHECK(told.find("no column for the wind (") != std::string::npos);
}

TEST_CASE("rows that are too short or too long") {
  const auto message = [](const std::string& line) {
    const std::string all = told_of_rows(line + "\n");
    return all.substr(0, all.find('\n'));
  };
  CHECK(message("2026-05-14T08:00,50,41") == "2:21: 3 fields, expected 4 as in the first line");
  CHECK(message("2026-05-14T08:00,50,41,5,6") == "2:26: 5 fields, expected 4 as in the first line");
  CHECK(message("x") == "2:1: 1 field, expected 4 as in the first line");
}

TEST_CASE("quotes that do not close") {
  CHECK(told_of_rows("2026-05-14T08:00,\"50,41,5\n") ==
        "2:18: the quote opened here does not close on its line\n"
        "    2026-05-14T08:00,\"50,41,5\n"
        "                     ^\n");
  CHECK(told_of_rows("2026-05-14T08:00,\"50\"1,41,5\n")
            .starts_with("2:22: text after a closing quote, expected a comma\n"));
}

TEST_CASE("a bad time of issue") {
  CHECK(told_of("# issued: yesterday\ntime,air_f,dew_point_f,wind_mph\n2026-05-14T08:00,50,41,5\n")
            .starts_with("1:3: issued: 'yesterday' is not a time such as 2026-05-14T08:00\n"));
}

TEST_CASE("a table without rows, or with none that can be used") {
  CHECK(told_of("time,air_f,dew_point_f,wind_mph\n").starts_with("1:1: no hours\n"));
  CHECK(told_of_rows("2026-05-14T08:00,50,,5\n")
            .starts_with("1:1: no hour gives the dew point or the humidity\n"));
}

TEST_CASE("columns are counted in characters") {
  CHECK(told_of("# source: Großes Feld\ntime,air_f,dew_point_f,wind_mph\n"
                "2026-05-14T08:00,°50,41,x\n") ==
        "3:18: air_f: '°50' is not a number\n"
        "    2026-05-14T08:00,°50,41,x\n"
        "                     ^\n"
        "  leave the field empty where the value is missing\n"
        "3:25: wind_mph: 'x' is not a number\n"
        "    2026-05-14T08:00,°50,41,x\n"
        "                            ^\n"
        "  leave the field empty where the value is missing\n");
}

TEST_CASE("reading stops after fifty errors") {
  std::string lines;
  for (int i = 0; i < 500; ++i) lines += "2026-05-14T08:00,x,41,5\n";
  const Parsed<Forecast> reading = read("time,air_f,dew_point_f,wind_mph\n" + lines);
  CHECK(reading.diagnostics.size() >= 50);
  CHECK(reading.diagnostics.size() < 55);
}

TEST_CASE("more rows than a year of hours") {
  std::string text = "time,air_f,dew_point_f,wind_mph\n";
  for (int i = 0; i < 10'001; ++i) text += ",,,\n";
  CHECK(told_of(text).starts_with("10001:1: more than 10000 rows\n"));
}

TEST_CASE("more fields than any table") {
  CHECK(told_of("time" + std::string(80, ',') + "\n")
            .starts_with("1:69: more than 64 fields on a line\n"));
}

TEST_CASE("what is no forecast at all") {
  const auto message = [](std::string_view text) {
    const std::string all = told(read(text), text);
    return all.substr(0, all.find('\n'));
  };
  CHECK(message("") == "1:1: the forecast is empty");
  CHECK(message(" \r\n\t\n") == "1:1: the forecast is empty");
  CHECK(message("<!DOCTYPE html><html>, ,</html>") == "1:1: this is a web page, not a forecast");
  CHECK(message(std::string_view{"time,\0air_f", 11}) == "1:1: the forecast is not a text file");
  CHECK(message("Fine tomorrow") == "1:1: not a forecast of a known kind");
  CHECK(message("# only a comment\n") == "1:1: not a forecast of a known kind");
}

}  // namespace slabtide
