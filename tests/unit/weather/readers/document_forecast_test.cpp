#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "support/run_program.h"
#include "unit/weather/readers/forecast_test_support.h"
#include "weather/readers/read_forecast.h"

// Every document of tests/forecasts is read and the complete result compared with the text of the
// same name ending in .expected. SLABTIDE_UPDATE_GOLDEN rewrites these; each was checked against
// its document by hand.

namespace slabtide {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> documents() {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator{SLABTIDE_SOURCE_DIR "/tests/forecasts"}) {
    if (entry.path().extension() != ".expected") found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::string written_out(const std::string& text) {
  const Parsed<Forecast> reading = read_forecast(text, {testing::central_time(), {}});
  std::string result = testing::told(reading, text);
  if (!reading.ok()) return result;
  result += fmt::format("source: {}\n", reading.value->source);
  if (reading.value->issued)
    result += fmt::format("issued: {}\n", iso8601_minute(*reading.value->issued, TimeZone{}));
  for (const std::string& note : reading.value->notes) result += fmt::format("note: {}\n", note);
  return result + testing::rows(*reading.value);
}

}  // namespace

TEST_CASE("documents read as expected") {
  REQUIRE(documents().size() >= 40);
  for (const fs::path& path : documents()) {
    CAPTURE(path.filename().string());
    const fs::path expected = fs::path{path}.replace_extension(".expected");
    const std::string actual = written_out(test::read_text(path));
    if (test::updating_golden()) test::write_text(expected, actual);
    CHECK(test::difference(test::read_text(expected), actual) == "");
  }
}

}  // namespace slabtide
