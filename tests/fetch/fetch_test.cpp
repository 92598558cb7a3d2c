#include <sys/resource.h>

#include <csignal>
#include <filesystem>
#include <functional>
#include <iterator>
#include <optional>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "fetch/fetch_fixture.h"
#include "slabtide/weather/read_forecast.h"
#include "support/forecast_documents.h"

namespace slabtide::test {
namespace {

const Date day_before{2026, 5, 13};

std::string grid_document() { return as_nws_grid(spring_hours(day_before, 96)); }
std::string hourly_document() { return as_nws_hourly(spring_hours(day_before, 96)); }
std::string open_meteo_document() { return as_open_meteo(spring_hours(day_before, 96)); }

/// Not a comparison in the check itself, whose message would print both.
bool holds(const std::filesystem::path& path, const std::string& text) {
  return read_text(path) == text;
}

std::string line_of(const std::string& text, std::size_t number) {
  std::size_t start = 0;
  for (std::size_t line = 1; line < number; ++line) start = text.find('\n', start) + 1;
  return text.substr(start, text.find('\n', start) - start);
}

/// Takes the folder's own name out of a text.
std::string without_folder(std::string text, const FetchFixture& fixture) {
  const std::string folder = fixture.folder.path().string() + "/";
  for (std::size_t at = text.find(folder); at != std::string::npos; at = text.find(folder))
    text.erase(at, folder.size());
  return text;
}

/// All of a text on one line, as before it was wrapped.
std::string unwrapped(const std::string& text) {
  std::string result;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text.compare(at, 3, "\n  ") == 0) {
      result += ' ';
      at += 2;
    } else {
      result += text[at];
    }
  }
  return result;
}

}  // namespace

TEST_CASE("the grid forecast of the National Weather Service in two steps") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  const FetchOutcome outcome = fixture.fetch();
  CHECK(outcome.err == "");
  CHECK(outcome.code == 0);
  CHECK(holds(fixture.forecast_path(), grid_document()));
  CHECK(unwrapped(without_folder(outcome.out, fixture)) ==
        "Asking the US National Weather Service for the hours at 44.9, -91.9.\n"
        "tomorrow.json: US National Weather Service, grid forecast, from Wed 13 May 2026 00:00 to "
        "Sat 16 May 2026 23:00.\n");
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
    CHECK(outcome.out.find("Took the hourly forecast, which tells no amounts of rain: ") !=
          std::string::npos);
  }
}

TEST_CASE("Open-Meteo in one step, its time of fetching kept in the document") {
  FetchFixture fixture;
  fixture.server.will_answer(open_meteo_path, answer(200, open_meteo_document()));
  const FetchOutcome outcome = fixture.fetch(ForecastService::open_meteo);
  CHECK(outcome.err == "");
  CHECK(outcome.code == 0);
  const Forecast kept = read_forecast(fixture.forecast_text(), TimeZone{}).value.value();
  CHECK(iso8601_minute(kept.issued.value(), TimeZone{}) == "2026-05-13T21:40+00:00");
  CHECK(fixture.forecast_text() ==
        fmt::format("{{\"slabtide_fetched\":\"2026-05-13T21:40+00:00\",{}",
                    open_meteo_document().substr(1)));
  const auto requests = fixture.server.requests();
  REQUIRE(requests.size() == 1);
  CHECK(requests[0].path ==
        "/v1/forecast?latitude=44.9&longitude=-91.9&hourly=temperature_2m,dew_point_2m,"
        "relative_humidity_2m,cloud_cover,wind_speed_10m,wind_gusts_10m,shortwave_radiation,"
        "precipitation,precipitation_probability,weather_code&wind_speed_unit=ms"
        "&timeformat=unixtime&past_days=1&forecast_days=5");
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

TEST_CASE("redirects are followed") {
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
               {0.0}},
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

namespace {

/// A failure: how it is set up, and what the user is told.
struct FailureRow {
  std::string name;
  std::function<void(FetchFixture&)> set_up;
  std::string told;  ///< the first line of the errors, not wrapped, the port as PORT
  std::size_t pauses = 0;
};

using SetUp = std::function<void(FetchFixture&)>;

SetUp grid(const Answer& given) {
  return [given](FetchFixture& fixture) {
    fixture.server.will_answer(grid_path, given);
    fixture.server.will_answer(hourly_path, given);
  };
}

SetUp points(const Answer& given) {
  return [given](FetchFixture& fixture) { fixture.server.only_answers(points_path, given); };
}

const std::string service = "slabtide fetch: the US National Weather Service ";
const std::string server = "slabtide fetch: the server 127.0.0.1:PORT ";
const std::string unusable =
    "slabtide fetch: what the US National Weather Service sent is no usable forecast: ";

std::string whole_answer() { return answer(200, grid_document()).bytes; }

/// The service says no.
std::vector<FailureRow> refusals() {
  return {
      {"404 with a problem body",
       points(answer(404,
                     problem_document(404, "Data Unavailable For Requested Point",
                                      "Unable to provide data for requested point 44.9,-91.9"),
                     "application/problem+json")),
       service + "has no forecast for this place (status 404): Data Unavailable For Requested "
                 "Point: Unable to provide data for requested point 44.9,-91.9 check the site's "
                 "latitude and longitude; it serves the United States only, use --from open-meteo "
                 "elsewhere"},
      {"403 without a body", points(answer(403, "")),
       service + "has no forecast for this place (status 403) check the site's latitude and "
                 "longitude"},
      {"500 for good", points(answer(500, "oh no", "text/plain")),
       service + "has no forecast for this place (status 500) run it again in a while", 3},
      {"429 that asks for an hour",
       points(answer(429, "{}", "application/json", "Retry-After: 3600\r\n")),
       service + "has no forecast for this place (status 429) it asks to wait: run it again in 60 "
                 "minutes"},
  };
}

/// Connections that fail.
std::vector<FailureRow> broken_answers() {
  return {
      {"a slow trickle", grid({.bytes = whole_answer(), .trickles = true}),
       server + "takes too long to answer run it again in a while"},
      {"a trickle of headers", points({.bytes = whole_answer(), .trickles = true}),
       server + "takes too long to answer run it again in a while"},
      {"a cut connection", grid({.bytes = whole_answer().substr(0, whole_answer().size() - 500)}),
       server + "broke off the connection run it again in a while"},
      {"a connection cut at once", grid({.bytes = ""}),
       server + "broke off the connection run it again in a while"},
  };
}

/// Answers that are no forecast.
std::vector<FailureRow> useless_answers() {
  return {
      {"a document cut short, but whole for http",
       grid(answer(200, grid_document().substr(0, 3000))),
       unusable + "this is not valid JSON: invalid string: missing closing quote; last read: "
                  "'\"value'; expected string literal run it again in a while"},
      {"a body over the limit", grid(answer(200, std::string(60'000, ' ') + grid_document())),
       server + "sends more than 60000 bytes, which is no forecast check the address"},
      {"an endless body without a length",
       grid({.bytes = fmt::format("HTTP/1.0 200 OK\r\n\r\n{:70000}", "")}),
       server + "sends more than 60000 bytes, which is no forecast check the address"},
      {"a web page", grid(answer(200, "<!DOCTYPE html><title>Log in</title>", "text/html")),
       unusable + "this is a web page, not a forecast run it again in a while"},
      {"an empty body", grid(answer(200, "")),
       unusable + "the forecast is empty run it again in a while"},
      {"another JSON document", grid(answer(200, "{\"a\":1}")),
       unusable + "a JSON document, but not a forecast of a known kind run it again in a while"},
      {"a forecast that contradicts itself",
       grid(answer(200, R"({"properties":{"temperature":{"uom":"wmoUnit:degC","values":[)"
                        R"({"validTime":"2026-05-14T12:00:00+00:00/PT1H","value":110}]}}})")),
       unusable + "properties.temperature.values[0].value: air temperature of 110 °C is "
                  "impossible, expected -90 to 60 °C run it again in a while"},
  };
}

/// Answers that lead elsewhere.
std::vector<FailureRow> false_ways() {
  return {
      {"no http at all", grid({.bytes = "SSH-2.0-door\r\n"}),
       server + "gives an answer that is not http check the address"},
      {"sent on and on",
       grid(answer(302, "", "text/plain", "Location: " + std::string{grid_path} + "\r\n")),
       server + "sends on and on, over 5 times check the address"},
      {"sent on to a file",
       grid(answer(302, "", "text/plain", "Location: file:///etc/hostname\r\n")),
       server + "sends on to file:///etc/hostname, which is not followed check the address"},
      {"points that are no JSON", points(answer(200, "<html>", "text/html")),
       "slabtide fetch: what the US National Weather Service sent is damaged: this is not valid "
       "JSON: invalid literal; last read: '<' check --base-url, or run it again in a while"},
      {"points that tell nothing", points(answer(200, "{\"properties\":{}}")),
       service + "does not tell where the forecast of this place is run it again in a while, or "
                 "use --from open-meteo"},
      {"points that name a stranger", points(answer(200, points_document("http://evil.example"))),
       service + "sends on to http://evil.example/gridpoints/XYZ/62,41, which is not followed "
                 "check --base-url"},
      {"points that name a file", points(answer(200, points_document("file:///tmp"))),
       service + "sends on to file:///tmp/gridpoints/XYZ/62,41, which is not followed check "
                 "--base-url"},
  };
}

std::vector<FailureRow> failures() {
  std::vector<FailureRow> rows;
  for (const auto& group : {refusals(), broken_answers(), useless_answers(), false_ways()}) {
    rows.insert(rows.end(), group.begin(), group.end());
  }
  return rows;
}

/// The first line of the errors with the server's port taken out.
std::string told_first(const FetchOutcome& outcome, const FetchFixture& fixture) {
  std::string line = line_of(unwrapped(outcome.err), 1);
  const std::string base = fixture.server.base_url();
  const std::string port = base.substr(base.rfind(':') + 1);
  const std::size_t at = line.find(fmt::format("127.0.0.1:{}", port));
  if (at != std::string::npos) line.replace(at + 10, port.size(), "PORT");
  return line.substr(0, line.find(fmt::format(" {}", fixture.folder.path().string())));
}

}  // namespace

TEST_CASE("the old forecast survives every failure, byte for byte") {
  for (const FailureRow& row : failures()) {
    CAPTURE(row.name);
    FetchFixture fixture;
    fixture.limits.total_limit_s = 0.5;
    fixture.limits.largest_bytes = 60'000;
    row.set_up(fixture);
    const FetchOutcome outcome = fixture.fetch();
    CHECK(outcome.code == 1);
    CHECK(told_first(outcome, fixture) == row.told);
    CHECK(outcome.pauses_s.size() == row.pauses);
    CHECK(fixture.forecast_text() == old_forecast);
    CHECK(unwrapped(outcome.err).find("tomorrow.json is as it was\n") != std::string::npos);
  }
}

TEST_CASE("what cannot be written leaves the old forecast") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  const auto told = [&](const std::string& to) {
    FetchOrder order;
    order.from = ForecastService::nws;
    order.contact = "pours@contractor.example";
    order.to = to;
    const FetchOutcome outcome = fixture.fetch_as(order);
    CHECK(outcome.code == 1);
    CHECK(fixture.forecast_text() == old_forecast);
    return unwrapped(without_folder(outcome.err, fixture));
  };
  const std::string folder = fixture.folder.path().string();
  CHECK(told(folder + "/none/tomorrow.json").find("there is no folder") != std::string::npos);
  CHECK(told(folder).find("it is a folder") != std::string::npos);
  CHECK(told("/proc/tomorrow.json").starts_with("slabtide fetch: cannot write"));
  CHECK(told("/dev/full")
            .starts_with("slabtide fetch: cannot write \"/dev/full\": the disk is full "));
}

TEST_CASE("a disk that takes no more leaves the old forecast") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  // A full disk without one: no file may grow over a kilobyte, and the write fails.
  rlimit before{};
  REQUIRE(::getrlimit(RLIMIT_FSIZE, &before) == 0);
  const rlimit tight{.rlim_cur = 1024, .rlim_max = before.rlim_max};
  auto* const handler = std::signal(SIGXFSZ, SIG_IGN);
  REQUIRE(::setrlimit(RLIMIT_FSIZE, &tight) == 0);
  const FetchOutcome outcome = fixture.fetch();
  ::setrlimit(RLIMIT_FSIZE, &before);
  std::signal(SIGXFSZ, handler);
  CHECK(outcome.code == 1);
  CHECK(outcome.err.starts_with("slabtide fetch: cannot write"));
  CHECK(fixture.forecast_text() == old_forecast);
  const auto left = std::distance(std::filesystem::directory_iterator{fixture.folder.path()}, {});
  CHECK(left == 2);  // the job and the old forecast: nothing half-written beside them
}

TEST_CASE("a server that is not there") {
  FetchFixture fixture;
  FetchOrder order;
  order.base_url = "http://127.0.0.1:1";  // a port nobody listens on
  const FetchOutcome outcome = fixture.fetch_as(order);
  CHECK(outcome.code == 1);
  CHECK(unwrapped(outcome.err)
            .starts_with("slabtide fetch: the server 127.0.0.1:1 cannot be reached check the "
                         "network and run it "
                         "again; a plan from the old forecast or typed weather needs none"));
  CHECK(fixture.forecast_text() == old_forecast);
}

TEST_CASE("https is not spoken by a plain server") {
  FetchFixture fixture;
  FetchOrder order;
  order.base_url = fmt::format("https{}", fixture.server.base_url().substr(4));
  const FetchOutcome outcome = fixture.fetch_as(order);
  CHECK(outcome.code == 1);
  CHECK(outcome.err.find("does not speak https as it should") != std::string::npos);
  CHECK(fixture.forecast_text() == old_forecast);
}

TEST_CASE("where the forecast goes, and what the job must say") {
  struct Row {
    std::string weather;
    std::optional<std::string> to;  ///< within the job's folder
    std::string written;
    std::string line;  ///< that the job needs; empty where it names the file already
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
        "For the plan to use it, let the job's [weather] hold this line alone:\n  ";
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
        "Warning: The forecast ends Wed 13 May 2026 23:00, before the pour's start on Thu 14 May "
        "2026 08:00. Fetch again when the pour is nearer.\n");
  CHECK(told(spring_hours(Date{2026, 5, 14}, 24)) ==
        "Warning: The forecast ends Thu 14 May 2026 23:00, less than a day after the pour's start. "
        "Fetch again before you plan.\n");
  CHECK(told(spring_hours(Date{2026, 5, 15}, 24)) ==
        "Warning: The forecast begins Fri 15 May 2026 00:00, after the pour's start on Thu 14 May "
        "2026 08:00. Check the pour's date.\n");
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
        "slabtide fetch: --to names the job file itself");
  CHECK(refused([](FetchOrder& order) {
          order.job_path = "/none/job.toml";
        }).starts_with("/none/job.toml: "));
  fixture.write_job("forecast = 5");
  CHECK(refused([](FetchOrder& /*order*/) {}).starts_with("job.toml:"));
}

}  // namespace slabtide::test
