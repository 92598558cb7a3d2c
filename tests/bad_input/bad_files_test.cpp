#include <filesystem>
#include <string>

#include <doctest/doctest.h>

#include "bad_input/messages.h"
#include "job/records/read_journal.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/job/records/mix_book.h"
#include "support/run_program.h"
#include "weather/readers/read_forecast.h"

// Every kind of file that a user supplies. Forecast documents with wrong contents are in
// tests/forecasts; here are files that a user might mistake for one.

namespace slabtide::test {
namespace {

Job spring_job() {
  const auto job =
      read_job(read_text(std::filesystem::path(SLABTIDE_SOURCE_DIR) / "data/demo/spring.toml"));
  REQUIRE(job.ok());
  return *job.value;
}

}  // namespace

TEST_CASE("every wrong job file is refused with its message") {
  check_messages(".toml", 131, [](const std::string& name, const std::string& text) {
    return told(read_job(text), name, text);
  });
}

TEST_CASE("every wrong journal of the spring demo's day") {
  const Job job = spring_job();
  check_messages(".journal", 7, [&job](const std::string& name, const std::string& text) {
    return told(read_journal(text, job), name, text);
  });
}

TEST_CASE("every wrong practice file") {
  const Practice base = default_practice();
  check_messages(".practice", 18, [&base](const std::string& name, const std::string& text) {
    return told(read_practice(text, base), name, text);
  });
}

TEST_CASE("every wrong mix book") {
  check_messages(".book", 14, [](const std::string& name, const std::string& text) {
    return told(read_mix_book(text), name, text);
  });
}

TEST_CASE("every file that is no forecast") {
  const TimeZone zone = spring_job().site.time_zone;
  check_messages(".forecast", 19, [&zone](const std::string& name, const std::string& text) {
    return told(read_forecast(text, {zone, {}}), name, text);
  });
}

}  // namespace slabtide::test
