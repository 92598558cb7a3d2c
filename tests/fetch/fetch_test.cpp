#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "fetch/fetch_fixture.h"
#include "support/forecast_documents.h"
#include "weather/readers/read_forecast.h"

namespace slabtide::test {
TEST_CASE("the grid forecast of the National Weather Service in two steps") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  const FetchOutcome outcome = fixture.fetch();
  CHECK(outcome.err == "");
  CHECK(outcome.code == 0);
  CHECK(holds(fixture.forecast_path(), grid_document()));
  CHECK(unwrapped(without_folder(outcome.out, fixture)) ==
        "Asking the US National Weather Service for the hours at 44.9, -91.9.\n"
        "tomorrow.json: US National Weather Service, grid forecast, from Wed, May 13, 2026, 12:00 "
        "AM to "
        "Sat, May 16, 2026, 11:00 PM.\n");
  const auto requests = fixture.server.requests();
  REQUIRE(requests.size() == 2);
  CHECK(requests[0].path == points_path);
  CHECK(requests[1].path == grid_path);
  for (const Request& request : requests) {
    CHECK(request.headers.find("User-Agent: slabtide/") != std::string::npos);
    CHECK(request.headers.find(" (pours@contractor.example)\r\n") != std::string::npos);
    CHECK(request.headers.find("Accept: application/geo+json, ") != std::string::npos);
  }
}

TEST_CASE("the hourly forecast where the grid cannot be used") {
  for (const std::string& grid : {as_nws_grid({}), std::string{"<html>"}}) {
    FetchFixture fixture;
    fixture.server.will_answer(grid_path, answer(200, grid));
    fixture.server.will_answer(hourly_path, answer(200, hourly_document()));
    const FetchOutcome outcome = fixture.fetch();
    CHECK(outcome.code == 0);
    CHECK(holds(fixture.forecast_path(), hourly_document()));
    CHECK(outcome.out.find("Took the hourly forecast, which gives no amounts of rain: ") !=
          std::string::npos);
  }
}

TEST_CASE("Open-Meteo in one step, its time of fetching kept in the document") {
  FetchFixture fixture;
  fixture.server.will_answer(open_meteo_path, answer(200, open_meteo_document()));
  const FetchOutcome outcome = fixture.fetch(ForecastService::open_meteo);
  CHECK(outcome.err == "");
  CHECK(outcome.code == 0);
  const Forecast kept = read_forecast(fixture.forecast_text(), {}).value.value();
  CHECK(iso8601_minute(kept.issued.value(), TimeZone{}) == "2026-05-13T21:40:00+00:00");
  CHECK(fixture.forecast_text() ==
        fmt::format("{{\"slabtide_fetched\":\"2026-05-13T21:40:00+00:00\",{}",
                    open_meteo_document().substr(1)));
  const auto requests = fixture.server.requests();
  REQUIRE(requests.size() == 1);
  CHECK(requests[0].path ==
        "/v1/forecast?latitude=44.9&longitude=-91.9&hourly=temperature_2m,dew_point_2m,"
        "relative_humidity_2m,cloud_cover,wind_speed_10m,wind_gusts_10m,shortwave_radiation,"
        "precipitation,precipitation_probability,weather_code&wind_speed_unit=ms"
        "&timeformat=unixtime&past_days=1&forecast_days=9");
}

TEST_CASE("progress is shown on a terminal, and taken away again") {
  FetchFixture fixture;
  fixture.on_terminal = true;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  const FetchOutcome outcome = fixture.fetch();
  CHECK(outcome.code == 0);
  const std::string whole = fmt::format("\r  {} kB", grid_document().size() / 1000);
  CHECK(outcome.err.find(whole) != std::string::npos);
  CHECK(outcome.err.ends_with(fmt::format("\r{:20}\r", "")));
}

TEST_CASE("redirects of the server to itself are followed") {
  FetchFixture fixture;
  const auto sent_on = [](int status, const std::string& to) {
    return answer(status, "", "text/plain", "Location: " + to + "\r\n");
  };
  fixture.server.will_answer(grid_path, sent_on(301, "/here"));
  fixture.server.will_answer("/here", sent_on(307, fixture.server.base_url() + "/there"));
  fixture.server.will_answer("/there", answer(200, grid_document()));
  const FetchOutcome outcome = fixture.fetch();
  CHECK(outcome.err == "");
  CHECK(outcome.code == 0);
  CHECK(holds(fixture.forecast_path(), grid_document()));
}

TEST_CASE("a busy server is tried again, as long after as it asks") {
  struct Row {
    std::string name;
    std::vector<Answer> before;
    std::vector<double> pauses_s;
  };
  const auto busy = [](int status, const std::string& header) {
    return answer(status, problem_document(status, "Busy", ""), "application/problem+json", header);
  };
  for (const Row& row : {
           Row{"500 once", {busy(500, "")}, {2.0}},
           Row{"503 three times", {busy(503, ""), busy(503, ""), busy(503, "")}, {2.0, 4.0, 8.0}},
           Row{"429 with seconds", {busy(429, "Retry-After: 7\r\n")}, {7.0}},
           Row{"429 with a date",
               {busy(429, "retry-after:  Wed, 13 May 2026 21:40:30 GMT\r\n")},
               {30.0}},
           Row{"a date that has passed",
               {busy(429, "Retry-After: Wed, 13 May 2026 21:39:00 GMT\r\n")},
               {2.0}},
           Row{"no seconds at all", {busy(429, "Retry-After: 0\r\n")}, {2.0}},
           Row{"a header that is neither", {busy(503, "Retry-After: soon\r\n")}, {2.0}},
       }) {
    CAPTURE(row.name);
    FetchFixture fixture;
    for (const Answer& one : row.before) fixture.server.will_answer(grid_path, one);
    fixture.server.will_answer(grid_path, answer(200, grid_document()));
    const FetchOutcome outcome = fixture.fetch();
    CHECK(outcome.err == "");
    CHECK(outcome.code == 0);
    CHECK(outcome.pauses_s == row.pauses_s);
    CHECK(holds(fixture.forecast_path(), grid_document()));
  }
}

TEST_CASE("where the forecast goes, and what the job must say") {
  struct Row {
    std::string weather;
    std::optional<std::string> to;  ///< within the job's folder
    std::string written;
    std::string line;  ///< that the job needs; empty if it already names the file
  };
  const std::string typed = "high = 66\nlow = 41\nwind = 7\ncloud = 20";
  for (const Row& row : {
           Row{"forecast = \"tomorrow.json\"", {}, "tomorrow.json", ""},
           Row{"forecast = \"tomorrow.json\"", "other.json", "other.json",
               "forecast = \"other.json\""},
           Row{"forecast = \"tomorrow.json\"", "./tomorrow.json", "tomorrow.json", ""},
           Row{"forecast = \"typed.csv\"",
               {},
               "job-forecast.json",
               "forecast = \"job-forecast.json\""},
           Row{typed, {}, "job-forecast.json", "forecast = \"job-forecast.json\""},
       }) {
    CAPTURE(row.written);
    FetchFixture fixture;
    fixture.server.will_answer(grid_path, answer(200, grid_document()));
    fixture.write_job(row.weather);
    FetchOrder order;
    order.contact = "pours@contractor.example";
    if (row.to) order.to = (fixture.folder.path() / *row.to).string();
    const FetchOutcome outcome = fixture.fetch_as(order);
    CHECK(outcome.err == "");
    CHECK(outcome.code == 0);
    CHECK(holds(fixture.folder.path() / row.written, grid_document()));
    const std::string advice =
        "For the plan to use it, let the job's [weather] hold only this line:\n  ";
    CHECK((outcome.out.find(advice) != std::string::npos) == !row.line.empty());
    if (!row.line.empty()) CHECK(outcome.out.find(advice + row.line + "\n") != std::string::npos);
  }
}

TEST_CASE("a job named without its folder keeps its forecast beside it") {
  FetchFixture fixture;
  fixture.write_job("high = 66\nlow = 41\nwind = 7\ncloud = 20");
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  const Outcome outcome =
      run_program({SLABTIDE_PROGRAM, "fetch", fixture.job_path().filename().string(), "--contact",
                   "pours@contractor.example", "--base-url", fixture.server.base_url()},
                  fixture.folder.path());
  CHECK(outcome.code == 0);
  CHECK(outcome.out.find("  forecast = \"job-forecast.json\"\n") != std::string::npos);
  CHECK(holds(fixture.folder.path() / "job-forecast.json", grid_document()));
}

TEST_CASE("the service where the user names none") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  const FetchOutcome outcome = fixture.fetch({});
  CHECK(unwrapped(outcome.out)
            .starts_with("Asking the US National Weather Service for the hours at 44.9, -91.9, "
                         "which serves the place "
                         "(--from names another).\n"));
}

TEST_CASE("a forecast that does not reach over the pour is kept with a warning") {
  const auto told = [](const std::vector<PlainHour>& hours) {
    FetchFixture fixture;
    fixture.server.will_answer(grid_path, answer(200, as_nws_grid(hours)));
    const FetchOutcome outcome = fixture.fetch();
    CHECK(outcome.code == 0);
    CHECK(holds(fixture.forecast_path(), as_nws_grid(hours)));
    return unwrapped(outcome.err);
  };
  CHECK(told(spring_hours(Date{2026, 5, 13}, 24)) ==
        "Warning: The forecast ends Wed, May 13, 2026, 11:00 PM, before the pour's start on "
        "Thu, May 14, 2026, 8:00 AM. Fetch again when the pour is closer.\n");
  CHECK(told(spring_hours(Date{2026, 5, 14}, 24)) ==
        "Warning: The forecast ends Thu, May 14, 2026, 11:00 PM, less than a day after the pour's "
        "start. "
        "Fetch again before you plan.\n");
  CHECK(told(spring_hours(Date{2026, 5, 15}, 24)) ==
        "Warning: The forecast begins Fri, May 15, 2026, 12:00 AM, after the pour's start on "
        "Thu, May 14, 2026, 8:00 AM. Check the pour's date.\n");
}

TEST_CASE("what is no forecast stays, and nobody is asked, unless forced") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  write_text(fixture.forecast_path(), "the firm's accounts\n");
  const FetchOutcome refused = fixture.fetch();
  CHECK(refused.code == 2);
  CHECK(without_folder(refused.err, fixture) ==
        "slabtide fetch: cannot write \"tomorrow.json\": what is there is a file that begins \"the "
        "firm's accounts ...\", expected a forecast fetched that slabtide wrote\n"
        "  Give another name; --force writes over it anyway\n");
  CHECK(fixture.server.requests().empty());
  CHECK(fixture.forecast_text() == "the firm's accounts\n");
  FetchOrder order;
  order.from = ForecastService::nws;
  order.force = true;
  CHECK(fixture.fetch_as(order).code == 0);
  CHECK(fixture.forecast_text() == grid_document());
}

TEST_CASE("orders that make no sense do nothing") {
  FetchFixture fixture;
  const auto refused = [&](const std::function<void(FetchOrder&)>& change) {
    FetchOrder order;
    change(order);
    const FetchOutcome outcome = fixture.fetch_as(order);
    CHECK(outcome.code == 2);
    CHECK(outcome.out == "");
    CHECK(fixture.forecast_text() == old_forecast);
    CHECK(fixture.server.requests().empty());
    return line_of(without_folder(outcome.err, fixture), 1);
  };
  CHECK(refused([](FetchOrder& order) { order.base_url = "ftp://forecasts.example"; }) ==
        "slabtide fetch: --base-url: got 'ftp://forecasts.example', expected an address such as "
        "https://forecasts.example");
  CHECK(refused([](FetchOrder& order) {
          order.base_url = "http://forecasts.example/?x=1";
        }).starts_with("slabtide fetch: --base-url: got "));
  for (const std::string contact : {"", "a\r\nHost: b", "(me)", "né"}) {
    CHECK(refused([&](FetchOrder& order) { order.contact = contact; }) ==
          "slabtide fetch: the contact must be plain text without brackets, such as an e-mail "
          "address");
  }
  CHECK(refused([&](FetchOrder& order) { order.to = fixture.job_path().string(); }) ==
        fmt::format("slabtide fetch: cannot write \"{}\": it is the job, which this run reads",
                    "job.toml"));
  CHECK(refused([](FetchOrder& order) {
          order.job_path = "/none/job.toml";
        }).starts_with("/none/job.toml: "));
  fixture.write_job("forecast = 5");
  CHECK(refused([](FetchOrder& /*order*/) {}).starts_with("job.toml:"));
}

}  // namespace slabtide::test
