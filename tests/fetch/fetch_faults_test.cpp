#include <sys/resource.h>

#include <csignal>
#include <filesystem>
#include <functional>
#include <iterator>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "core/utf8.h"
#include "fetch/fetch_fixture.h"

// Failures on the way: servers, connections, answers, the disk.

namespace slabtide::test {

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

/// The service refuses.
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
      {"429 that asks for a minute",
       points(answer(429, "{}", "application/json", "Retry-After: 61\r\n")),
       service + "has no forecast for this place (status 429) it asks to wait: run it again in 2 "
                 "minutes"},
      {"429 that asks for days",
       points(answer(429, "{}", "application/json", "Retry-After: 90000\r\n")),
       service + "has no forecast for this place (status 429) it asks to wait: run it again in 25 "
                 "hours"},
      {"503 until a time that has passed",
       points(
           answer(503, "{}", "application/json", "Retry-After: Wed, 13 May 2026 21:39:00 GMT\r\n")),
       service + "has no forecast for this place (status 503) run it again in a while", 3},
  };
}

/// Text with which a server might try to control a terminal.
// NOLINTBEGIN(misc-misleading-bidirectional): a mark that turns the direction of text
constexpr const char* steering = "\\u001b[2J\\u0007\\u009b31m\\u202e\\u2028\\r\\nslabtide: done";
constexpr const char* steering_shown = "␛[2J␇�31m��␍␊slabtide: done";
// NOLINTEND(misc-misleading-bidirectional)

/// Servers that try to control the terminal.
std::vector<FailureRow> steering_servers() {
  const std::string advice = " check the site's latitude and longitude";
  const auto said = [](const std::string& body) { return points(answer(403, body)); };
  const std::string long_words(5'000'000, 'x');
  return {
      {"a title and a detail", said(problem_document(403, steering, steering)),
       fmt::format("{}has no forecast for this place (status 403): {}: {}{}", service,
                   steering_shown, steering_shown, advice)},
      {"a reason", said(fmt::format(R"({{"error":true,"reason":"{}"}})", steering)),
       fmt::format("{}has no forecast for this place (status 403): {}{}", service, steering_shown,
                   advice)},
      {"a reason of five million letters",
       [said, long_words](FetchFixture& fixture) {
         fixture.limits.largest_bytes = 6'000'000;
         fixture.limits.total_limit_s = 60.0;
         said(fmt::format(R"({{"reason":"{}"}})", long_words))(fixture);
       },
       fmt::format("{}has no forecast for this place (status 403): {}...{}", service,
                   long_words.substr(0, 297), advice)},
      {"a way to the forecast",
       points(answer(200, points_document(fmt::format("http://evil.example/{}", steering)))),
       fmt::format("{}sends on to http://evil.example/{}{}, which is not followed check --base-url",
                   service, steering_shown, grid_path)},
      {"a redirect",
       points(
           answer(302, "", "text/plain", "Location: gopher://x/\x1b[2J\xC2\x9B\xE2\x80\xAE\r\n")),
       server + "sends on to gopher://x/␛[2J��, which is not followed check the address"},
      {"a forecast that is none", grid(answer(200, fmt::format(R"({{"title":"{}"}})", steering))),
       fmt::format("{}the service gave no forecast: {} run it again in a while", unusable,
                   steering_shown)},
      {"a value in a forecast",
       grid(answer(200, fmt::format(R"({{"properties":{{"temperature":{{"values":[)"
                                    R"({{"validTime":"{}","value":1}}]}}}}}})",
                                    "\\u001b[2J\\u202e"))),
       unusable + "properties.temperature.values[0].validTime: '␛[2J�' is not a time with an "
                  "offset and a duration, such as 2026-05-14T12:00:00+00:00/PT1H run it again in a "
                  "while"},
  };
}

/// Endless headers.
std::vector<FailureRow> endless_headers() {
  std::string many;
  for (int i = 0; i < 3000; ++i) many += fmt::format("X-Line-{}: {:40}\r\n", i, "x");
  const std::string told = server + "sends a header too long for any forecast check the address";
  return {
      {"a header line of 200 kB",
       points(answer(200, "{}", "application/json", fmt::format("X-A: {:x<200000}\r\n", "x"))),
       told},
      {"3,000 lines of header", points(answer(200, "{}", "application/json", many)), told},
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

/// Answers that are not forecasts.
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

/// Answers that lead to other addresses.
std::vector<FailureRow> false_ways() {
  return {
      {"no http at all", grid({.bytes = "SSH-2.0-door\r\n"}),
       server + "gives an answer that is not http check the address"},
      {"sent on and on",
       grid(answer(302, "", "text/plain", "Location: " + std::string{grid_path} + "\r\n")),
       server + "sends on and on, over 5 times check the address"},
      {"sent on to another server",
       grid(answer(302, "", "text/plain", "Location: http://evil.example/grid\r\n")),
       server + "sends on to the server evil.example, which is not followed check the address"},
      {"sent on to another port",
       grid(answer(302, "", "text/plain", "Location: http://127.0.0.1:1/grid\r\n")),
       server + "sends on to the server 127.0.0.1:1, which is not followed check the address"},
      {"sent on to a file",
       grid(answer(302, "", "text/plain", "Location: file:///etc/hostname\r\n")),
       server + "sends on to file:///etc/hostname, which is not followed check the address"},
      {"points that are no JSON", points(answer(200, "<html>", "text/html")),
       "slabtide fetch: what the US National Weather Service sent is damaged: this is not valid "
       "JSON: invalid literal; last read: '<' check --base-url, or run it again in a while"},
      {"points that tell nothing", points(answer(200, "{\"properties\":{}}")),
       service + "does not say where the forecast for this place is run it again in a while, or "
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
  for (const auto& group : {refusals(), steering_servers(), endless_headers(), broken_answers(),
                            useless_answers(), false_ways()}) {
    rows.insert(rows.end(), group.begin(), group.end());
  }
  return rows;
}

/// The first line of the errors, with the server's port replaced.
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
    CHECK(printable_lines(outcome.err) == outcome.err);
    CHECK(fixture.forecast_text() == old_forecast);
    CHECK(unwrapped(outcome.err).find("tomorrow.json is as it was\n") != std::string::npos);
  }
}

TEST_CASE("a success repeats no server's words raw") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(500, problem_document(500, steering, "")));
  fixture.server.will_answer(hourly_path, answer(200, hourly_document()));
  const FetchOutcome outcome = fixture.fetch();
  CHECK(outcome.code == 0);
  CHECK(unwrapped(outcome.out)
            .find(fmt::format("Took the hourly forecast, which gives no amounts of rain: the US "
                              "National Weather Service has no forecast for this place (status "
                              "500): {}.",
                              steering_shown)) != std::string::npos);
  CHECK(printable_lines(outcome.out) == outcome.out);
}

TEST_CASE("a file's name steers no terminal either") {
  FetchFixture fixture;
  fixture.server.will_answer(grid_path, answer(200, grid_document()));
  FetchOrder order;
  order.from = ForecastService::nws;
  order.to = (fixture.folder.path() / "odd\x1b[2J\n\u202E.json").string();
  const FetchOutcome outcome = fixture.fetch_as(order);
  CHECK(outcome.code == 0);
  CHECK(outcome.out.find("odd␛[2J␊�.json") != std::string::npos);
  CHECK(printable_lines(outcome.out) == outcome.out);
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
  // Simulates a full disk: no file may grow beyond a kilobyte, so the write fails.
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
  CHECK(left == 2);  // the job and the old forecast, nothing half-written
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

}  // namespace slabtide::test
