#include "slabtide/request/plan/days_request.h"

#include <map>
#include <sstream>
#include <string>

#include <doctest/doctest.h>

#include "slabtide/cli/command/run.h"
#include "slabtide/report/text/text_days.h"
#include "slabtide/report/words/days_facts.h"
#include "support/forecast_documents.h"
#include "support/run_program.h"

// The days planned from texts alone, as a front end without files has them.

namespace slabtide {
namespace {

Sources texts_in_memory(const std::map<std::string, std::string>& texts) {
  return sources_in_memory(
      texts, [](std::string_view name) { return TimeZone::load(name); },
      UtcTime(Date(2026, 5, 13), boost::posix_time::hours(23)));
}

const std::string job_text = test::read_text(SLABTIDE_SOURCE_DIR "/data/demo/spring.toml");
const std::string week_text = test::as_csv_us(test::spring_hours(Date{2026, 5, 13}, 72));

TEST_CASE("days from texts are those of the command, which reads files") {
  const test::TempFolder folder;
  const auto path = [&folder](const char* name) { return (folder.path() / name).string(); };
  test::write_text(path("pad.toml"), job_text);
  test::write_text(path("week.csv"), week_text);
  std::ostringstream out;
  std::ostringstream err;
  const int code = run({"days", path("pad.toml"), "--forecast", path("week.csv"), "--draws", "4",
                        "--now", "2026-05-13T18:00-05:00"},
                       out, err);
  CHECK(code == 0);
  std::ostringstream findings;
  const auto days = days_request({.path = "pad.toml", .forecast = "week.csv"},
                                 texts_in_memory({{"pad.toml", job_text}, {"week.csv", week_text}}),
                                 findings, {4});
  REQUIRE(days);
  CHECK(test::difference(out.str(), text_days(*days, TextStyle{})) == "");
  CHECK(err.str().empty());
  CHECK(findings.str().empty());
}

TEST_CASE("concrete of which nobody told the temperature follows each day's air") {
  std::string job = job_text;
  const std::string told = "concrete_temperature = 62\n";
  job.erase(job.find(told), told.size());
  std::ostringstream findings;
  const auto days =
      days_request({.path = "pad.toml", .forecast = "week.csv"},
                   texts_in_memory({{"pad.toml", job}, {"week.csv", week_text}}), findings, {0});
  REQUIRE(days);
  CHECK(days_assumptions(*days).front() ==
        "concrete at 4 °F over the day's mean, 60 °F at least, as nobody told it: ask the plant");
}

TEST_CASE("a job with its weather typed in is told to fetch a forecast") {
  std::ostringstream findings;
  CHECK_FALSE(
      days_request({.path = "pad.toml"}, texts_in_memory({{"pad.toml", job_text}}), findings, {}));
  CHECK(
      findings.str() ==
      "pad.toml: weather: choosing a day takes a forecast, and the job has only one day's weather "
      "typed in\n  get one with slabtide fetch, and name it with --forecast or as [weather] "
      "forecast\n");
}

}  // namespace
}  // namespace slabtide
