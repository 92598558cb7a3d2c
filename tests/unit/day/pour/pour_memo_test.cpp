#include "day/pour/pour_memo.h"

#include <doctest/doctest.h>

#include "slabtide/day/pour/pour_run.h"
#include "support/plain_forecast.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

// What is kept from pour to pour must change no pour.

namespace slabtide {
namespace {

Job shaded_job() {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 4, 4))});
  job.obstacles = {testing::wall({-1.0, -1.0}, {5.0, -1.0}, 3.0),
                   testing::tree({6.0, 2.0}, 1.5, 5.0, 0.2)};
  return job;
}

PourRun run_of(const Job& job, PourMemo* memo) {
  return run_pour(job, test::series_of(job), default_practice(), {}, {max_cells, memo})
      .value.value();
}

void check_same(const PourRun& a, const PourRun& b) {
  REQUIRE(a.histories.size() == b.histories.size());
  for (std::size_t i = 0; i < a.histories.size(); ++i) {
    CHECK(a.histories[i].surface_c == b.histories[i].surface_c);
    CHECK(a.histories[i].strength_psi == b.histories[i].strength_psi);
  }
}

TEST_CASE("a pour is the same with what another of its site has kept, in any weather") {
  for (const SiteLight::Keep keep : {SiteLight::Keep::sky, SiteLight::Keep::all}) {
    PourMemo memo(shaded_job().obstacles, keep);
    const PourRun first = run_of(shaded_job(), &memo);
    check_same(first, run_of(shaded_job(), nullptr));
    check_same(first, run_of(shaded_job(), &memo));
    Job other = shaded_job();
    std::get<TypedWeather>(other.weather).high_c += 8.0;
    check_same(run_of(other, &memo), run_of(other, nullptr));
    other = shaded_job();
    other.pour.start = after_seconds(other.pour.start, 7200.0);
    check_same(run_of(other, &memo), run_of(other, nullptr));
    other = shaded_job();
    other.zones[0].base.kept = BaseKept::wet;
    check_same(run_of(other, &memo), run_of(other, nullptr));
  }
}

TEST_CASE("a job with other obstacles is not told what these hide") {
  PourMemo memo(shaded_job().obstacles, SiteLight::Keep::all);
  run_of(shaded_job(), &memo);
  Job open = shaded_job();
  open.obstacles[0].height_m = 1.0;
  check_same(run_of(open, &memo), run_of(open, nullptr));
}

TEST_CASE("the ground under a pour is kept, for its weather alone") {
  const Job job = shaded_job();
  const PourRun run = run_of(job, nullptr);
  PourMemo memo({}, SiteLight::Keep::all);
  KeptGrounds* grounds = memo.grounds(run.weather, 15.0);
  const BarePlace place{job.zones[0].base, false, {1.0, 1.0}};
  CHECK(!grounds->at(place, 600.0));
  grounds->keep(place, 600.0, {{0.0, 21.0}});
  CHECK(memo.grounds(run.weather, 15.0)->at(place, 600.0)->front().temperature_c == 21.0);
  CHECK(!grounds->at(place, 720.0));
  CHECK(!grounds->at({job.zones[0].base, false, {1.0, 1.5}}, 600.0));
  CHECK(!memo.grounds(run.weather, 16.0)->at(place, 600.0));
  SiteWeather warmer = run.weather;
  warmer.air_c.back() += 0.1;
  CHECK(!memo.grounds(warmer, 15.0)->at(place, 600.0));
  CHECK(PourMemo({}, SiteLight::Keep::sky).grounds(run.weather, 15.0) == nullptr);
}

}  // namespace
}  // namespace slabtide
