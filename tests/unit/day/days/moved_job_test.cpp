#include "day/days/moved_job.h"

#include <doctest/doctest.h>

#include "support/sample_job.h"

namespace slabtide {
namespace {

UtcTime utc(int month, int day, int hour, int minute = 0) {
  return UtcTime(Date(2026, static_cast<unsigned short>(month), static_cast<unsigned short>(day)),
                 boost::posix_time::time_duration(hour, minute, 0));
}

Job job_in(const char* rule) {
  Job job = test::sample_job({test::zone_named("a", test::rectangle(0, 0, 2, 2)),
                              test::zone_named("b", test::rectangle(4, 0, 2, 2))});
  job.site.time_zone = *TimeZone::from_posix_rule("test", rule).zone;
  return job;
}

TEST_CASE("zones keep their distance from the start, covers their hours of the clock") {
  Job job = job_in("UTC0");
  job.pour.start = utc(5, 14, 8);
  job.zones[1].placed_at = utc(5, 14, 9, 30);
  job.pour.covers = {{CuringKind::blanket, 0.5, utc(5, 14, 20), utc(5, 15, 7), {}}};
  const Job moved = moved_to(job, utc(5, 16, 6));
  CHECK(moved.pour.date == Date(2026, 5, 16));
  CHECK(moved.pour.start == utc(5, 16, 6));
  CHECK_FALSE(moved.zones[0].placed_at);
  CHECK(*moved.zones[1].placed_at == utc(5, 16, 7, 30));
  CHECK(moved.pour.covers[0].from == utc(5, 16, 20));
  CHECK(moved.pour.covers[0].to == utc(5, 17, 7));
}

TEST_CASE("over a change of the clocks a cover keeps its hour, and the date is the site's") {
  // US central time; the clocks go back in the night to November 1, 2026.
  Job job = job_in("CST6CDT,M3.2.0,M11.1.0");
  job.pour.date = Date(2026, 10, 30);
  job.pour.start = utc(10, 30, 13);  // 8:00 AM CDT
  job.pour.covers = {{CuringKind::blanket, 0.5, utc(10, 30, 23), utc(10, 31, 12), {}}};
  const Job moved = moved_to(job, utc(11, 2, 3));  // 9:00 PM CST of the day before
  CHECK(moved.pour.date == Date(2026, 11, 1));
  CHECK(moved.pour.covers[0].from == utc(11, 2, 0));  // 6:00 PM CST
  CHECK(moved.pour.covers[0].to == utc(11, 2, 13));   // 7:00 AM CST
}

}  // namespace
}  // namespace slabtide
