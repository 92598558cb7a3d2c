#include <sstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "slabtide/cli/command/run.h"
#include "support/forecast_documents.h"
#include "support/run_program.h"

namespace slabtide {
namespace {

/// The plan of the spring demo with this forecast, as JSON without the line with the forecast's
/// source.
std::string plan_with(const std::string& document) {
  const test::TempFolder folder;
  const std::string job = SLABTIDE_SOURCE_DIR "/data/demo/spring.toml";
  const std::string forecast = (folder.path() / "forecast").string();
  const std::string plan = (folder.path() / "plan.json").string();
  test::write_text(forecast, document);
  std::ostringstream out;
  std::ostringstream err;
  const int code =
      run({"plan", job, "--forecast", forecast, "--now", "2026-05-13T18:00", "--write", plan}, out,
          err);
  REQUIRE_MESSAGE(code == 0, err.str());
  std::string json = test::read_text(plan);
  const std::size_t source = json.find("\"source\": ");
  REQUIRE(source != std::string::npos);
  return json.erase(source, json.find('\n', source) - source);
}

std::vector<test::PlainHour> weather() { return test::spring_hours(Date{2026, 5, 13}, 96); }

}  // namespace

TEST_CASE("the same weather in every format plans to the same minute, and to the last figure") {
  const std::string expected = plan_with(test::as_csv_us(weather()));
  CHECK(expected.find("\"final_set\"") != std::string::npos);
  for (const auto& document : {test::as_csv_si(weather()), test::as_nws_hourly(weather()),
                               test::as_nws_grid(weather()), test::as_open_meteo(weather())}) {
    CAPTURE(document.substr(0, 60));
    CHECK(test::difference(expected, plan_with(document)) == "");
  }
}

TEST_CASE("half a degree more is another plan") {
  auto warmer = weather();
  for (test::PlainHour& hour : warmer) hour.air_c += 0.5;
  const bool same = plan_with(test::as_nws_grid(warmer)) == plan_with(test::as_nws_grid(weather()));
  CHECK_FALSE(same);
}

}  // namespace slabtide
