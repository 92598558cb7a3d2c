#include "planner/answer.h"

#include <sstream>
#include <string>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "slabtide/report/text/text_plan.h"
#include "slabtide/request/plan/plan_request.h"
#include "slabtide/request/write/report_formats.h"
#include "support/run_program.h"

// What the planner's page is told is what the library says.

namespace slabtide {
namespace {

using Json = nlohmann::json;

const std::string now_text = "2026-05-13T18:00";

TimeZone::Loaded system_zone(std::string_view name) { return TimeZone::load(name); }

Json ask(const Json& request) { return Json::parse(answer(request.dump(), system_zone)); }

std::string demo(const std::string& name) {
  return test::read_text(SLABTIDE_SOURCE_DIR "/data/demo/" + name);
}

Json plan_request_of(const std::string& text) {
  return {{"ask", "plan"},   {"job", "pad.toml"}, {"texts", {{"pad.toml", text}}},
          {"now", now_text}, {"draws", 0},        {"formats", {".json", ".html", ".ics", ".csv"}}};
}

/// A job that plans at once, for what is not about the plan.
const std::string small_job = R"(name = "One pad"
[site]
latitude = 45.1
longitude = -91.6
time_zone = "America/Chicago"
[pour]
date = 2026-05-14
start = "08:00"
[weather]
high = 66
low = 41
wind = 7
cloud = 20
[mix]
w_cm = 0.45
concrete_temperature = 62
[[zone]]
name = "pad"
outline = [[0, 0], [12, 0], [12, 10], [0, 10]]
thickness = 4
finish = "broom"
)";

TEST_CASE("a plan has the verdict and the very files that the library makes") {
  for (const char* name : {"spring.toml", "hot.toml"}) {
    const std::string text = demo(name);
    const Json told = ask(plan_request_of(text));
    REQUIRE(told["ok"] == true);
    std::ostringstream messages;
    const auto pour =
        plan_request({.path = "pad.toml", .now = now_text},
                     sources_in_memory({{"pad.toml", text}}, system_zone, UtcTime()), messages);
    REQUIRE(pour);
    for (const auto ending : endings_of(plan_formats())) {
      CHECK(told["files"][std::string(ending)] ==
            *made_as(ending, plan_formats(), *pour, {pour->now, {}}));
    }
    CHECK(told["text"] == text_plan(*pour, TextStyle{}));
    CHECK(told["verdict"]["words"] == "Pour with care");
    CHECK(told["verdict"]["level"] == 1);
    CHECK(told["messages"] == messages.str());
  }
}

TEST_CASE("draws give the plan its bands") {
  Json request = plan_request_of(small_job);
  request["draws"] = 20;
  request["formats"] = {".json"};
  const Json told = ask(request);
  REQUIRE(told["ok"] == true);
  CHECK(told["files"].size() == 1);
  CHECK(Json::parse(told["files"][".json"].get<std::string>())["sureness"]["draws"] == 20);
}

TEST_CASE("a job that does not fit is told by key, line and column") {
  std::string text = small_job;
  text.replace(text.find("\"broom\""), 7, "\"brom\"");
  const Json told = ask(plan_request_of(text));
  CHECK(told["ok"] == false);
  CHECK_FALSE(told.contains("files"));
  REQUIRE(told["findings"].size() == 1);
  const Json& finding = told["findings"][0];
  CHECK(finding["severity"] == "error");
  CHECK(finding["key"] == "zone[1].finish");
  CHECK(finding["line"] == 21);
  CHECK(finding["column"] == 10);
  CHECK(finding["message"] == "got \"brom\", expected stamp, texture roll, broom, float or trowel");
  CHECK(told["messages"].get<std::string>().starts_with("pad.toml:21:10: zone[1].finish: got"));
}

TEST_CASE("a job file comes as its tables, in their order, dates kept") {
  const Json told = ask({{"ask", "read"}, {"job", "a.toml"}, {"texts", {{"a.toml", small_job}}}});
  REQUIRE(told["ok"] == true);
  const std::string whole =
      answer(Json({{"ask", "read"}, {"job", "a.toml"}, {"texts", {{"a.toml", small_job}}}}).dump(),
             system_zone);
  CHECK(whole.find("\"pour\":{\"date\":{\"$time\":\"2026-05-14\"},\"start\":\"08:00\"}") !=
        std::string::npos);
  CHECK(whole.find("\"site\"") < whole.find("\"pour\""));
  CHECK(told["document"]["zone"][0]["outline"][1] == Json({12.0, 0.0}));
}

TEST_CASE("what is no job file is refused with its line") {
  const Json torn =
      ask({{"ask", "read"}, {"job", "a.toml"}, {"texts", {{"a.toml", "name = \"a\n"}}}});
  CHECK(torn["ok"] == false);
  REQUIRE(torn["findings"].size() == 1);
  CHECK(torn["findings"][0]["line"] == 1);
  const Json odd =
      ask({{"ask", "read"}, {"job", "a.toml"}, {"texts", {{"a.toml", small_job + "[oven]\n"}}}});
  CHECK(odd["ok"] == false);
  CHECK(odd["findings"][0]["key"] == "oven");
}

Json note_of(const std::string& reading, const std::string& at, const std::string& journal = {}) {
  return ask({{"ask", "note"},
              {"job", "a.toml"},
              {"texts", {{"a.toml", small_job}, {"a.journal", journal}}},
              {"reading", reading},
              {"at", at},
              {"zone", "pad"}});
}

TEST_CASE("a sign that was seen becomes a line of the journal") {
  const Json told = note_of("thumbprint", "2026-05-14T16:05Z");
  REQUIRE(told["ok"] == true);
  CHECK(told["line"] == "2026-05-14 11:05  thumbprint  pad\n");
  CHECK(told["heading"].get<std::string>().starts_with("# What was seen: One pad\n"));
  const std::string journal = told["line"];
  const Json again = note_of("print-firm", "2026-05-14T16:25Z", journal);
  CHECK(again["ok"] == true);
}

TEST_CASE("a sign that cannot be is refused, alone or beside the others") {
  CHECK(note_of("thumbprnt", "2026-05-14T16:05Z")["ok"] == false);
  CHECK(note_of("thumbprint", "2026-05-24T16:05Z")["ok"] == false);
  const std::string placed = "2026-05-14 08:10  placed  pad\n";
  const Json twice = note_of("placed", "2026-05-14T16:05Z", placed);
  CHECK(twice["ok"] == false);
  CHECK_FALSE(twice["findings"].empty());
}

TEST_CASE("a forecast tells its source and its hours") {
  const Json told = ask({{"ask", "forecast"},
                         {"time_zone", "America/Chicago"},
                         {"text",
                          "time,air_f,dew_point_f,wind_mph,cloud_percent\n"
                          "2026-05-14T00:00,50,40,5,10\n2026-05-14T01:00,49,40,5,10\n"}});
  REQUIRE(told["ok"] == true);
  CHECK(told["first"] == "2026-05-14T00:00-05:00");
  CHECK(told["last"] == "2026-05-14T01:00-05:00");
  CHECK(ask({{"ask", "forecast"}, {"time_zone", "America/Chicago"}, {"text", "no"}})["ok"] ==
        false);
  CHECK(ask({{"ask", "forecast"},
             {"time_zone", "Moon/Base"},
             {"text", "no"}})["findings"][0]["message"] == "there is no time zone \"Moon/Base\"");
}

TEST_CASE("the sun goes over by ten minutes") {
  const Json told = ask({{"ask", "sun"},
                         {"latitude", 45.1},
                         {"longitude", -91.6},
                         {"time_zone", "America/Chicago"},
                         {"date", "2026-05-14"}});
  REQUIRE(told["ok"] == true);
  REQUIRE(told["positions"].size() == 145);
  // 05:38 is sunrise by the plan of the spring demo.
  CHECK(told["positions"][33]["elevation_deg"].get<double>() < -0.83);
  CHECK(told["positions"][34]["elevation_deg"].get<double>() > -0.9);
  CHECK(told["positions"][78]["azimuth_deg"].get<double>() == doctest::Approx(180.0).epsilon(0.05));
}

TEST_CASE("what is no request is an error and nothing worse") {
  for (const char* request : {"", "{", "[]", "null", "{}", "{\"ask\": 1}", "{\"ask\": \"bake\"}",
                              "{\"ask\": \"plan\"}", "{\"ask\": \"plan\", \"job\": \"a\"}",
                              "{\"ask\": \"read\", \"job\": \"a\", \"texts\": {\"a\": 1}}",
                              "{\"ask\": \"read\", \"job\": \"a\", \"texts\": []}"}) {
    const Json told = Json::parse(answer(request, system_zone));
    CHECK(told["ok"] == false);
    CHECK(told.contains("error"));
  }
  Json request = plan_request_of(small_job);
  request["draws"] = -1;
  CHECK(ask(request)["error"] == "draws: not from 0 to 10000");
}

}  // namespace
}  // namespace slabtide
