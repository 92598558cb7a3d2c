#include "planner/packed_zones.h"

#include <array>
#include <string>

#include <doctest/doctest.h>

#include "support/run_program.h"

namespace slabtide {
namespace {

TEST_CASE("a zone carried inside has the offsets of the system's file") {
  const std::string bytes =
      test::read_text((TimeZone::default_zoneinfo_dir() / "America/Chicago").string());
  const std::array zones{PackedZone{"America/Chicago", bytes}, PackedZone{"Etc/Broken", "no"}};
  const TimeZoneLoader load = load_from(zones);
  const TimeZone::Loaded loaded = load("America/Chicago");
  REQUIRE(loaded.zone);
  CHECK(loaded.zone->name() == "America/Chicago");
  const TimeZone system = *TimeZone::load("America/Chicago").zone;
  for (const Date date : {Date(2026, 1, 5), Date(2026, 7, 5), Date(2060, 7, 5)}) {
    CHECK(loaded.zone->offset_at(UtcTime(date)) == system.offset_at(UtcTime(date)));
  }
}

TEST_CASE("what is not carried, or damaged, is told") {
  const std::array zones{PackedZone{"Etc/Broken", "no"}};
  const TimeZoneLoader load = load_from(zones);
  for (const char* name : {"America/Chicago", "Etc/Broke", "Z", ""}) {
    const TimeZone::Loaded loaded = load(name);
    CHECK_FALSE(loaded.zone);
    CHECK(loaded.error.message == "there is no time zone \"" + std::string(name) + "\"");
  }
  CHECK(load("CST").error.next_step == "Name its city: \"America/Chicago\"");
  CHECK_FALSE(load("Etc/Broken").zone);
  CHECK(load("Etc/Broken").error.message.find("time-zone file") != std::string::npos);
}

}  // namespace
}  // namespace slabtide
