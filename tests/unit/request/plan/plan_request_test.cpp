#include "slabtide/request/plan/plan_request.h"

#include <algorithm>
#include <map>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "slabtide/cli/command/run.h"
#include "slabtide/report/text/text_plan.h"
#include "slabtide/request/write/report_formats.h"
#include "support/forecast_documents.h"
#include "support/run_program.h"

// A pour planned from texts alone gives the same plan as the command, which reads files.

namespace slabtide {
namespace {

const std::string now_text = "2026-05-13T18:00";

TimeZone::Loaded system_zone(std::string_view name) { return TimeZone::load(name); }

Sources memory(const std::map<std::string, std::string>& texts) {
  return sources_in_memory(texts, system_zone, UtcTime(Date(2026, 5, 13)));
}

std::string demo(const std::string& name) {
  return test::read_text(SLABTIDE_SOURCE_DIR "/data/demo/" + name);
}

/// The texts of a job by file name, in one folder; the job is "pad.toml".
using Texts = std::map<std::string, std::string>;

/// What the command prints and writes for the job, whose files are in a folder of their own.
struct Told {
  int code = 0;
  std::string out;
  std::string err;
  std::map<std::string, std::string> written;  ///< by ending
};

Told by_command(const Texts& texts) {
  const test::TempFolder folder;
  const auto in_folder = [&folder](const std::string& name) {
    return (folder.path() / name).string();
  };
  for (const auto& [name, text] : texts) test::write_text(in_folder(name), text);
  std::vector<std::string> words{"plan", in_folder("pad.toml"), "--now", now_text, "--draws", "20"};
  for (const auto ending : endings_of(plan_formats())) {
    words.insert(words.end(), {"--write", in_folder("plan" + std::string(ending))});
  }
  std::ostringstream out;
  std::ostringstream err;
  Told told;
  told.code = run(words, out, err);
  told.out = out.str();
  // Messages give the paths of the files.
  const std::string above = folder.path().string() + "/";
  told.err = err.str();
  for (auto at = told.err.find(above); at != std::string::npos; at = told.err.find(above)) {
    told.err.erase(at, above.size());
  }
  for (const auto ending : endings_of(plan_formats())) {
    told.written[std::string(ending)] = test::read_text(in_folder("plan" + std::string(ending)));
  }
  return told;
}

Told by_texts(const Texts& texts) {
  std::ostringstream findings;
  Told told;
  auto pour = plan_request({.path = "pad.toml", .now = now_text}, memory(texts), findings);
  told.err = findings.str();
  told.code = pour ? 0 : 2;
  for (const auto ending : endings_of(plan_formats())) told.written[std::string(ending)] = "";
  if (!pour) return told;
  *pour = with_uncertainty(std::move(*pour), {20, 0, {}});
  told.out = text_plan(*pour, TextStyle{});
  for (auto& [ending, text] : told.written) {
    text = made_as(ending, plan_formats(), *pour, {pour->now, ""}).value();
  }
  return told;
}

void check_same(const Texts& texts) {
  const Told expected = by_command(texts);
  const Told actual = by_texts(texts);
  CHECK(actual.code == expected.code);
  CHECK(test::difference(expected.out, actual.out) == "");
  CHECK(test::difference(expected.err, actual.err) == "");
  for (const auto& file : expected.written) {
    CAPTURE(file.first);
    CHECK(test::difference(file.second, actual.written.at(file.first)) == "");
  }
}

/// The demo with its weather in a separate file.
std::string demo_with_forecast() {
  std::string job = demo("spring.toml");
  const auto table = job.find("\n[weather]");
  const auto next = job.find("\n[", table + 2);
  return job.replace(table, next - table, "\n[weather]\nforecast = \"week.csv\"\n");
}

std::string week() { return test::as_csv_us(test::spring_hours(Date{2026, 5, 13}, 96)); }

/// What the plan of a job says it assumed.
std::vector<std::string> assumed(const std::string& job) {
  std::ostringstream findings;
  const auto pour = plan_request({.path = "pad.toml"}, memory({{"pad.toml", job}}), findings);
  INFO(findings.str());
  REQUIRE(pour);
  return pour->plan.assumptions;
}

bool says(const std::vector<std::string>& said, std::string_view start) {
  return std::any_of(said.begin(), said.end(),
                     [start](const std::string& one) { return one.starts_with(start); });
}

std::string with(std::string text, std::string_view from, std::string_view to) {
  return text.replace(text.find(from), from.size(), to);
}

}  // namespace

TEST_CASE("the demo job alone is planned from its text as from its file") {
  const Told told = by_texts({{"pad.toml", demo("spring.toml")}});
  CHECK(told.code == 0);
  CHECK(told.out.find("Weather") != std::string::npos);
  check_same({{"pad.toml", demo("spring.toml")}});
}

TEST_CASE("forecast and journal are found by their names beside the job") {
  const Texts texts{{"pad.toml", demo_with_forecast()},
                    {"week.csv", week()},
                    {"pad.journal", "2026-05-14T10:30 concrete 64 °F\n"}};
  const Told told = by_texts(texts);
  CHECK(told.code == 0);
  CHECK(told.err == "");
  check_same(texts);
}

TEST_CASE("what is wrong is found with line and column, as from a file") {
  std::string job = demo("spring.toml");
  job.replace(job.find("latitude"), 8, "lattitude");
  const Told told = by_texts({{"pad.toml", job}});
  CHECK(told.code == 2);
  CHECK(told.err.find("lattitude") != std::string::npos);
  check_same({{"pad.toml", job}});
}

TEST_CASE("a text that is named but missing is named") {
  std::ostringstream findings;
  const auto pour =
      plan_request({.path = "pad.toml"}, memory({{"pad.toml", demo_with_forecast()}}), findings);
  CHECK_FALSE(pour);
  CHECK(findings.str() ==
        "week.csv: this text is missing\n  Add it, or take its name out of the job\n");
}

TEST_CASE("time zones and the clock are those that are given") {
  const auto far_off = [](std::string_view name) {
    return TimeZone::from_posix_rule(name, "<+09>-9");
  };
  const UtcTime moment(Date(2026, 5, 13), boost::posix_time::hours(5));
  std::ostringstream findings;
  const auto pour = plan_request(
      {.path = "pad.toml"}, sources_in_memory({{"pad.toml", demo("spring.toml")}}, far_off, moment),
      findings);
  REQUIRE(pour);
  CHECK(pour->now == moment);
  CHECK(pour->job.site.time_zone.offset_at(moment) == boost::posix_time::hours(9));
}

TEST_CASE("fewer days are drawn of a pour with very many zones, so that the work is bounded") {
  PlannedPour pour;
  pour.plan.zones.resize(3);
  CHECK(samples_for(pour.plan, 200) == 200);
  CHECK(samples_for(pour.plan, 60) == 60);
  // Sixty zones in a first and a last part, with borders: 9 columns each, and one.
  pour.plan.zones.resize(60);
  for (ZonePlan& zone : pour.plan.zones) {
    zone.parts.resize(2);
    zone.border.emplace();
  }
  CHECK(samples_for(pour.plan, 200) == max_sampled_columns / 541);
  CHECK(samples_for(pour.plan, 10) == 10);
  pour.plan.zones.front().faces.resize(10000);
  CHECK(samples_for(pour.plan, 200) == min_samples);
}

TEST_CASE("what a job leaves out is assumed, and said") {
  const std::string job = R"(name = "pad"
[site]
latitude = 45
longitude = -92
[pour]
date = 2026-07-14
start = 8 AM
[weather]
high = 86
low = 66
[mix]
cement = 6 sack
strength = 4000
[[zone]]
name = "pad"
outline = [[0, 0], [12, 0], [12, 10], [0, 10]]
thickness = 4
finish = "broom"
[[zone.face]]
length = 12
height = 7
)";
  const auto said = assumed(job);
  // A mean of some 76 °F, and 4 over it.
  CHECK(says(said, "concrete at 80 °F"));
  CHECK(says(said, "wind 7 mph, as none is given"));
  CHECK(says(said, "a clear sky"));
  CHECK(says(said, "dew point 66 °F, the morning's low"));
  CHECK(says(said, "the night after as cold as the one before, 66 °F"));
  CHECK(says(said, "concrete 1 ft deep behind the face of the pad"));
  CHECK(!says(assumed(with(job, "height = 7", "height = 4")), "concrete 1 ft"));
  std::string told =
      with(job, "low = 66\n", "low = 66\nnext_low = 60\ndew_point = 55\nwind = 5\ncloud = 0\n");
  told = with(told, "4000\n", "4000\nconcrete_temperature = 80\n");
  told = with(told, "height = 7\n", "height = 7\ntread = 14\n");
  const auto less = assumed(told);
  for (const char* start : {"concrete", "wind 7", "a clear sky", "dew point", "the night after"}) {
    CAPTURE(start);
    CHECK(!says(less, start));
  }
}

}  // namespace slabtide
