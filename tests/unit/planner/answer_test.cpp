#include "planner/answer.h"

#include <map>
#include <sstream>
#include <string>
#include <utility>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "request/plan/compared_pour.h"
#include "slabtide/day/plan/outlook.h"
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
    Json request = plan_request_of(text);
    CHECK_FALSE(ask(request).contains("text"));
    request["words"] = true;
    const Json told = ask(request);
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

/// The small job planned by the library.
PlannedPour small_pour(const std::map<std::string, std::string>& beside = {}) {
  std::map<std::string, std::string> texts = beside;
  texts["a.toml"] = small_job;
  std::ostringstream messages;
  auto pour = plan_request({.path = "a.toml", .now = now_text},
                           sources_in_memory(texts, system_zone, UtcTime()), messages);
  REQUIRE(pour);
  return std::move(*pour);
}

Json small_request(const char* word, const std::map<std::string, std::string>& beside = {}) {
  Json request{
      {"ask", word}, {"job", "a.toml"}, {"now", now_text}, {"formats", {".json", ".html"}}};
  request["texts"] = beside;
  request["texts"]["a.toml"] = small_job;
  return request;
}

TEST_CASE("without a number of draws a plan has as many as the command line's, crew and saw too") {
  Json request = plan_request_of(demo("hot.toml"));
  request["words"] = true;
  request.erase("draws");
  request["formats"] = {".json"};
  const Json told = ask(request);
  const Json day = Json::parse(told["files"][".json"].get<std::string>());
  CHECK(day["sureness"]["draws"] == 200);
  CHECK(told["crew"].get<std::string>().find("finisher 1") != std::string::npos);
  CHECK(told["saw"].get<std::string>().find("early-entry") != std::string::npos);
}

TEST_CASE("what can still be changed is the library's own comparison") {
  Json request = small_request("compare");
  request["draws"] = 0;
  const Json told = ask(request);
  REQUIRE(told["ok"] == true);
  const PlannedPour pour = small_pour();
  const ComparedPour compared = compare_pour(pour, 0, 1, {});
  const CompareFacts facts{pour, compared.comparison, compared.turning, compared.advice};
  for (const auto ending : endings_of(compare_formats())) {
    CHECK(told["files"][std::string(ending)] ==
          *made_as(ending, compare_formats(), facts, {pour.now, {}}));
  }
}

TEST_CASE("the weather by the hour is the library's own page") {
  const Json told = ask(small_request("outlook"));
  REQUIRE(told["ok"] == true);
  const PlannedPour pour = small_pour();
  const Outlook outlook = look_ahead(pour);
  CHECK(told["files"][".html"] ==
        *made_as(".html", outlook_formats(), OutlookFacts{pour, outlook}, {pour.now, {}}));
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
  CHECK(finding["message"] ==
        "got \"brom\", expected stamp, texture roll, broom, float, trowel, exposed aggregate or "
        "salt");
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

TEST_CASE("the page is told what people type in its plain form") {
  std::string text = small_job;
  const auto type = [&text](std::string_view plain, std::string_view typed) {
    const std::size_t at = text.find(plain);
    REQUIRE(at != std::string::npos);
    text.replace(at, plain.size(), typed);
  };
  type("latitude = 45.1", "latitude = 45.1° N");
  type("longitude = -91.6", "longitude = 91.6° W");
  type("date = 2026-05-14", "date = 5/14/2026");
  type("high = 66", "high = 66 F");
  type("w_cm = 0.45", "w_cm = 0.45\ncement = 6 sack");
  type("[12, 0], [12, 10]", "[12', 0], [144 in, 10]");
  type("thickness = 4", "thickness = 4\"\ntied = yes\nextra_volume = 1/2 yard");
  const Json told = ask({{"ask", "read"}, {"job", "a.toml"}, {"texts", {{"a.toml", text}}}});
  REQUIRE(told["ok"] == true);
  const Json& tables = told["document"];
  CHECK(tables["site"]["latitude"] == 45.1);
  CHECK(tables["site"]["longitude"] == -91.6);
  CHECK(tables["pour"]["date"]["$time"] == "2026-05-14");
  CHECK(tables["weather"]["high_f"] == 66.0);
  CHECK(tables["mix"]["sacks"] == 6.0);
  CHECK(!tables["mix"].contains("cement"));
  const Json& zone = tables["zone"][0];
  CHECK(zone["outline"] == Json({{0.0, 0.0}, {12.0, 0.0}, {12.0, 10.0}, {0.0, 10.0}}));
  CHECK(zone["thickness_in"] == 4.0);
  CHECK(zone["tied"] == true);
  CHECK(zone["extra_volume_yd3"] == 0.5);
  CHECK(zone["name"] == "pad");
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

const std::string seen =
    "2026-05-14 08:04  placed  pad\n2026-05-14 11:20  thumbprint  pad\n"
    "2026-05-14 13:05  initial-set  pad\n";

TEST_CASE("what was noted stands beside what was planned") {
  const Json told = ask(small_request("check-back", {{"a.journal", seen}}));
  REQUIRE(told["ok"] == true);
  const Json facts = Json::parse(told["files"][".json"].get<std::string>());
  REQUIRE(facts["readings"].size() == 3);
  CHECK(facts["readings"][1]["reading"] == "thumbprint");
  CHECK(facts["readings"][1]["planned"].is_string());
  CHECK(ask(small_request("check-back"))["findings"][0]["message"] ==
        "nothing was noted for this pour");
}

TEST_CASE("a finished pour goes into the mix book, from which the next plan starts") {
  CHECK(ask(small_request("learn", {{"a.journal", seen}}))["findings"][0]["key"] == "mix.name");
  std::string named = small_job;
  named.replace(named.find("[mix]\n"), 6, "[mix]\nname = \"six sack\"\n");
  Json request = small_request("learn", {{"a.journal", seen}});
  request["texts"]["a.toml"] = named;
  const Json told = ask(request);
  REQUIRE(told["ok"] == true);
  CHECK(told["told"].get<std::string>().starts_with("six sack, set times by "));
  const std::string book = told["book"];
  const Json mixes = ask({{"ask", "mixes"}, {"text", book}});
  CHECK(mixes["mixes"] == Json::parse(R"([{"name": "six sack", "pours": 1}])"));

  // Learned again it stays the same; the next day's plan goes by it.
  request["texts"]["mix-book.toml"] = book;
  CHECK(ask(request)["book"] == book);
  std::string next = named;
  next.replace(next.find("2026-05-14"), 10, "2026-05-15");
  Json plan = plan_request_of(next);
  plan["formats"] = {".json"};
  const std::string before = ask(plan)["files"][".json"];
  plan["texts"]["mix-book.toml"] = book;
  CHECK(ask(plan)["files"][".json"] != before);
}

TEST_CASE("what is no mix book is told by its line; nothing noted is nothing to learn") {
  const Json told = ask({{"ask", "mixes"}, {"text", "[[mix]]\nname = 3\n"}});
  CHECK(told["ok"] == false);
  CHECK(told["findings"][0]["line"] == 2);
  std::string named = small_job;
  named.replace(named.find("[mix]\n"), 6, "[mix]\nname = \"six sack\"\n");
  Json request = small_request("learn");
  request["texts"]["a.toml"] = named;
  CHECK(ask(request)["findings"][0]["message"] == "nothing was noted for this pour");
}

TEST_CASE("a forecast tells its source and its hours") {
  const Json told = ask({{"ask", "forecast"},
                         {"time_zone", "America/Chicago"},
                         {"text",
                          "time,air_f,dew_point_f,wind_mph,cloud_percent\n"
                          "2026-05-14T00:00,50,40,5,10\n2026-05-14T01:00,49,40,5,10\n"}});
  REQUIRE(told["ok"] == true);
  CHECK(told["first"] == "2026-05-14T00:00:00-05:00");
  CHECK(told["last"] == "2026-05-14T01:00:00-05:00");
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
