#include "report/text/text_touch.h"

#include <doctest/doctest.h>

#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

TEST_CASE("the crew's time on a zone is its own, whatever else is called so") {
  Job job =
      test::sample_job({test::zone_named("first", test::rectangle(0, 0, 6, 6), Finish::trowel),
                        test::zone_named("second", test::rectangle(10, 0, 6, 6), Finish::trowel)});
  DayPlan plan = test::plan_of(job).plan;
  const std::string first = touch_strips(0, plan, job, {});
  const std::string second = touch_strips(1, plan, job, {});
  constexpr std::size_t clock_size = 9;  // "10:45 AM" and the line's end
  const auto crew_time = [](const std::string& strips) {
    return strips.substr(strips.size() - clock_size);
  };
  REQUIRE(crew_time(first) != crew_time(second));
  // Shown alike from here on: names do not tell places apart.
  for (Zone& zone : job.zones) zone.name = "pad";
  for (ZonePlan& zone : plan.zones) zone.name = "pad";
  for (Task& task : plan.crew.tasks) task.zone = "pad";
  CHECK(crew_time(touch_strips(0, plan, job, {})) == crew_time(first));
  CHECK(crew_time(touch_strips(1, plan, job, {})) == crew_time(second));
}

TEST_CASE("a label too long for its column stands in a line of its own, whole") {
  Job job =
      test::sample_job({test::zone_named("a walk with a long name", test::rectangle(0, 0, 6, 6),
                                         Finish::exposed_aggregate),
                        test::zone_named("pad", test::rectangle(10, 0, 6, 6))});
  const DayPlan plan = test::plan_of(job).plan;
  const std::string strips = touch_strips(0, plan, job, {});
  CHECK(strips.find("  a walk with a long name, surface retarder\n  ") != std::string::npos);
  const std::string own = touch_strips(1, plan, job, {});
  CHECK(own.find("\n  pad, ") != std::string::npos);
  CHECK(own.find("  pad, broom\n") == std::string::npos);
}

}  // namespace
}  // namespace slabtide
